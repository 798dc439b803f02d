/** Why something does not go to the server. */
export interface Trouble {
  /** The server's short name for it, such as "entry-differs". */
  readonly code: string;
  /** The server's own sentence, where ours does not say more. */
  readonly detail?: string;
}
