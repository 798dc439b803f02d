import type { Store } from "./tables.ts";

/** A setting of the workshop; undefined when nobody set it. */
export async function readSetting(store: Store, key: string): Promise<string | undefined> {
  const row = await store.db.selectFrom("settings").select("value").where("key", "=", key).executeTakeFirst();
  return row?.value;
}

export async function writeSetting(store: Store, key: string, value: string): Promise<void> {
  await store.db
    .insertInto("settings")
    .values({ key, value })
    .onConflict((conflict) => conflict.column("key").doUpdateSet({ value }))
    .execute();
}

/** Sets a setting unless it is set; returns the one that stands, the same for all who come at once. */
export async function settingOnce(store: Store, key: string, value: string): Promise<string> {
  await store.db
    .insertInto("settings")
    .values({ key, value })
    .onConflict((conflict) => conflict.column("key").doNothing())
    .execute();
  return (await readSetting(store, key)) ?? value;
}

export async function removeSetting(store: Store, key: string): Promise<void> {
  await store.db.deleteFrom("settings").where("key", "=", key).execute();
}
