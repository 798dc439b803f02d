/** The files that make a page: as it is loaded, and what the framework fetches when a link to it is followed. */
export interface KeptPage {
  readonly html: string;
  readonly data: string;
}

/** By address, without what follows a question mark. */
export type KeptPages = Readonly<Record<string, KeptPage>>;

/** The page that sets a record of the knowledge in the browser: one instead of one for each record. */
export const READING_PAGE = "/read";

/** Addresses of records: a kind and an id. */
const RECORD = /^\/(parts|checks|findings)\/([a-z0-9-]+)$/;

/** The record that an address names; undefined for any other address. */
export function recordOf(pathname: string): { readonly kind: string; readonly id: string } | undefined {
  const [, kind, id] = RECORD.exec(pathname) ?? [];
  return kind === undefined || id === undefined ? undefined : { kind, id };
}

/** The page that is kept for an address; undefined when the address is not one of the app's. */
export function pageOf(pathname: string, pages: KeptPages): KeptPage | undefined {
  const address = recordOf(pathname) === undefined ? pathname : READING_PAGE;
  return Object.hasOwn(pages, address) ? pages[address] : undefined;
}
