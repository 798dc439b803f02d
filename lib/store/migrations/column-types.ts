import { type RawBuilder, sql } from "kysely";
import type { StoreKind } from "../tables.ts";

type DataType = RawBuilder<unknown>;

/** Types of columns, by database. */
export interface ColumnTypes {
  /** Text that sorts by code, in both databases alike, whatever language the server is set to. */
  readonly text: DataType;
  readonly integer: DataType;
  /** Whole number up to 2^53. */
  readonly long: DataType;
  /** Bytes of a file. */
  readonly bytes: DataType;
  /** A point in time and a yes or no, as the library of accounts wants them; SQLite keeps text and 0 or 1 in them. */
  readonly moment: DataType;
  readonly flag: DataType;
}

export function columnTypes(kind: StoreKind): ColumnTypes {
  return kind === "postgres"
    ? {
        text: sql`text collate "C"`,
        integer: sql`integer`,
        long: sql`bigint`,
        bytes: sql`bytea`,
        moment: sql`timestamptz`,
        flag: sql`boolean`,
      }
    : {
        text: sql`text`,
        integer: sql`integer`,
        long: sql`integer`,
        bytes: sql`blob`,
        moment: sql`date`,
        flag: sql`integer`,
      };
}
