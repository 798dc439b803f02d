"use client";

/** What went wrong with the last request of a form. */
export function Failed({ words }: { readonly words: string | undefined }) {
  return (
    <p role="alert" className={words === undefined ? undefined : "trouble"}>
      {words}
    </p>
  );
}
