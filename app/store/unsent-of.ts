import { openDatabase } from "./open-database.ts";
import { databaseName, type PersonHere } from "./person-here.ts";

/** How many entries of a person wait on this device for the server; held ones of invented cases are not counted. */
export async function unsentOf(person: Pick<PersonHere, "id"> | undefined): Promise<number> {
  const db = await openDatabase(databaseName(person), () => undefined);
  try {
    return (await db.getAll("unsent")).filter((row) => row.held === undefined).length;
  } finally {
    db.close();
  }
}
