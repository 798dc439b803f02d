import type { Kysely } from "kysely";
import type { StoreKind } from "../tables.ts";
import { columnTypes } from "./column-types.ts";

/** Exercises, the copies of them that were handed out, and what trainees made of them. */
export async function makeExercises(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  const { text, integer } = columnTypes(kind);
  await db.schema
    .createTable("exercises")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("owner_id", text)
    .addColumn("name", text, (c) => c.notNull())
    .addColumn("body", text, (c) => c.notNull())
    .addColumn("made_at", text, (c) => c.notNull())
    .addColumn("changed_at", text, (c) => c.notNull())
    .addColumn("version", integer, (c) => c.notNull())
    .addColumn("removed_at", text)
    .execute();
  await db.schema
    .createIndex("exercises_owner")
    .on("exercises")
    .columns(["owner_id", "changed_at"])
    .execute();
  await db.schema
    .createTable("hand_outs")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("exercise_id", text, (c) => c.notNull().references("exercises.id"))
    .addColumn("body", text, (c) => c.notNull())
    .addColumn("code", text, (c) => c.notNull().unique())
    .addColumn("token_hash", text, (c) => c.notNull().unique())
    .addColumn("course", text)
    .addColumn("made_by", text)
    .addColumn("made_at", text, (c) => c.notNull())
    .addColumn("expires_at", text, (c) => c.notNull())
    .addColumn("revoked_at", text)
    .execute();
  await db.schema
    .createIndex("hand_outs_exercise")
    .on("hand_outs")
    .columns(["exercise_id", "made_at"])
    .execute();
  await db.schema
    .createTable("attempts")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("hand_out_id", text, (c) => c.notNull().references("hand_outs.id"))
    .addColumn("exercise_id", text, (c) => c.notNull().references("exercises.id"))
    .addColumn("trainee_id", text)
    .addColumn("name", text, (c) => c.notNull())
    .addColumn("token_hash", text)
    .addColumn("started_at", text, (c) => c.notNull())
    .addColumn("ended_at", text)
    .addColumn("score", text)
    .addColumn("version", integer, (c) => c.notNull())
    .execute();
  for (const [name, first] of Object.entries(LISTED)) {
    await db.schema
      .createIndex(name)
      .on("attempts")
      .columns([...first, "started_at", "id"])
      .execute();
  }
  await db.schema
    .createTable("attempt_entries")
    .addColumn("attempt_id", text, (c) => c.notNull().references("attempts.id"))
    .addColumn("seq", integer, (c) => c.notNull())
    .addColumn("id", text, (c) => c.notNull())
    .addColumn("at", text, (c) => c.notNull())
    .addColumn("kind", text, (c) => c.notNull())
    .addColumn("body", text, (c) => c.notNull())
    .addColumn("received_at", text, (c) => c.notNull())
    .addPrimaryKeyConstraint("attempt_entries_id", ["attempt_id", "id"])
    .addUniqueConstraint("attempt_entries_seq", ["attempt_id", "seq"])
    .execute();
}

/** By what attempts are listed, the newest first. */
const LISTED = {
  attempts_started: [],
  attempts_exercise: ["exercise_id"],
  attempts_trainee: ["trainee_id"],
  attempts_token: ["token_hash"],
};
