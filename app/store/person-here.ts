/** Somebody with an account, as this browser knows them. */
export interface PersonHere {
  readonly id: string;
  readonly name: string;
  readonly role: string;
}

const KEY = "cornerwise/person";

/**
 * Who signed in here last and has not signed out; undefined for a browser that nobody signed in to.
 *
 * Known without asking the server, so that a person's own cases open with no network. Each person has a database of
 * their own; a change of person therefore asks for a fresh load of the page.
 */
export function personHere(): PersonHere | undefined {
  if (typeof localStorage === "undefined") return undefined;
  try {
    return readPerson(localStorage.getItem(KEY));
  } catch {
    return undefined; // a browser that keeps nothing
  }
}

let page: { readonly person: PersonHere | undefined } | undefined;

/**
 * Whose page this is, from its load on.
 *
 * Another tab may sign somebody else in while this one is open; what was entered here stays with whom it was entered by.
 */
export function pagePerson(): PersonHere | undefined {
  if (typeof localStorage === "undefined") return undefined;
  page ??= { person: personHere() };
  return page.person;
}

/** A person from the text that is kept; undefined when it is none. */
export function readPerson(text: string | null): PersonHere | undefined {
  if (text === null) return undefined;
  try {
    const { id, name, role } = JSON.parse(text) as Partial<PersonHere>;
    if (typeof id !== "string" || typeof name !== "string" || typeof role !== "string") return undefined;
    return { id, name, role };
  } catch {
    return undefined;
  }
}

/** Notes who signed in; undefined when they signed out. */
export function rememberPerson(person: PersonHere | undefined): void {
  try {
    if (person === undefined) localStorage.removeItem(KEY);
    else {
      const { id, name, role } = person;
      localStorage.setItem(KEY, JSON.stringify({ id, name, role }));
    }
  } catch {
    // Without storage the server's answer at the next load says it again.
  }
}

/** Calls back when another tab signs somebody in or out. */
export function onPersonChange(listener: () => void): () => void {
  const hear = (event: StorageEvent): void => {
    if (event.key === KEY || event.key === null) listener();
  };
  window.addEventListener("storage", hear);
  return () => window.removeEventListener("storage", hear);
}

/** Name of the database of a person; the one without a person is for use without accounts. */
export function databaseName(person: Pick<PersonHere, "id"> | undefined): string {
  return person === undefined ? "cornerwise" : `cornerwise-${person.id}`;
}
