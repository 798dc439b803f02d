// Opens the database named in the first argument, says so, and closes it.
import { openStore, readSetting, settingOnce } from "../../../lib/store/index.ts";

const store = await openStore({ database: process.argv[2] ?? "" });
process.stdout.write(`${await settingOnce(store, "secret", `${process.pid}`)}\n`);
process.stdout.write(`${await readSetting(store, "secret")}\n`);
await store.close();
