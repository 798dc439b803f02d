/** What somebody wrote into the message. */
export interface OwnMessage {
  /** Undefined while the message is the one that is made. */
  readonly text?: string;
  /** The made message that they wrote in. */
  readonly of?: string;
  /** Own words that were put aside for a message made anew. */
  readonly put?: string;
}

/** A draft of the message read back; anything odd is taken as the words themselves, so that none are lost. */
export function ownMessage(draft: string): OwnMessage {
  if (draft === "") return {};
  try {
    const read: unknown = JSON.parse(draft);
    if (read === null || typeof read !== "object" || Array.isArray(read)) return { text: draft };
    const { text, of, put } = read as Readonly<Record<string, unknown>>;
    return {
      ...(typeof text === "string" && { text }),
      ...(typeof of === "string" && { of }),
      ...(typeof put === "string" && { put }),
    };
  } catch {
    return { text: draft };
  }
}
