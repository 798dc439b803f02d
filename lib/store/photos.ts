import { appendEntriesIn, type Appended, type AppendRequest } from "./append-entries.ts";
import { lockedCase } from "./locked-case.ts";
import { StoreProblem } from "./problem.ts";
import type { Bytes, Store } from "./tables.ts";

export const PHOTO_LIMITS = {
  /** Photos of one case. */
  ofCase: 12,
  /** Bytes of all photos: what is kept must fit into an archive that can be read again. */
  ofShop: 1_600_000_000,
} as const;

/** A picture as it is kept: JPEG, upright, without anything beside the picture. */
export interface Picture {
  readonly bytes: Uint8Array;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

export interface NewPhoto extends Omit<AppendRequest, "entries" | "asNew"> {
  /** Made on the device; with the case's id it names the photo. */
  readonly id: string;
  readonly picture: Picture;
  /** The link whose form it came by. */
  readonly linkId: string | null;
  /** The entry of the case that names it. */
  readonly entry: AppendRequest["entries"][number];
}

/**
 * Keeps a photo and adds its entry to the case: both or, on any error, neither. One that is there already is left alone,
 * so that a delivery may be repeated.
 *
 * Shape   undefined: it was there, and nothing was changed.
 * Errors  StoreProblem no-such-case, case-removed, case-full, photos-full, entry-differs, disk-full, read-only, unreachable, busy.
 */
export async function keepPhoto(store: Store, photo: NewPhoto): Promise<Appended | undefined> {
  const { caseId, id, picture, linkId, entry, ...sent } = photo;
  return store.db.transaction().execute(async (trx) => {
    await lockedCase(trx, store.kind, caseId);
    const there = await trx.selectFrom("photos").select("id").where("case_id", "=", caseId).execute();
    if (there.some((one) => one.id === id)) return undefined;
    const { size } = await trx
      .selectFrom("photos")
      .select(({ fn }) => fn.sum<number | string | null>("size").as("size"))
      .executeTakeFirstOrThrow();
    refuseWhenFull(caseId, there.length + 1, Number(size ?? 0) + picture.bytes.length);
    await trx
      .insertInto("photos")
      .values({
        case_id: caseId,
        id,
        width: picture.width,
        height: picture.height,
        size: picture.bytes.length,
        received_at: photo.now,
        account_id: photo.accountId,
        link_id: linkId,
        bytes: Buffer.from(picture.bytes),
      })
      .execute();
    return appendEntriesIn(trx, store.kind, { ...sent, caseId, entries: [entry] });
  });
}

function refuseWhenFull(caseId: string, count: number, size: number): void {
  if (count > PHOTO_LIMITS.ofCase) {
    throw new StoreProblem(
      "photos-full",
      `The case has ${PHOTO_LIMITS.ofCase} photos, and no more can be kept with it.`,
      { caseId },
    );
  }
  if (size <= PHOTO_LIMITS.ofShop) return;
  throw new StoreProblem(
    "photos-full",
    "The workshop's room for photos is full: more would not fit into a backup. Old cases can be removed to make room.",
    { size },
  );
}

/** The bytes as an array, whichever database gave them. */
export const bytesOf = (bytes: Bytes): Uint8Array<ArrayBuffer> => new Uint8Array(bytes as ArrayBuffer);

/** A photo of a case; undefined when there is none of that id. */
export async function readPhoto(store: Store, caseId: string, id: string): Promise<Picture | undefined> {
  const row = await store.db
    .selectFrom("photos")
    .select(["bytes", "width", "height"])
    .where("case_id", "=", caseId)
    .where("id", "=", id)
    .executeTakeFirst();
  return row && { ...row, bytes: bytesOf(row.bytes) };
}

/** Removes a picture for good, as its sender took it back; the entry that names it stays. */
export async function removePhoto(store: Store, caseId: string, id: string): Promise<void> {
  await store.db.deleteFrom("photos").where("case_id", "=", caseId).where("id", "=", id).execute();
}
