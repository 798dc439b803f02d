"use client";

const KEY = "cornerwise/attempts";

/**
 * The secret by which the server knows this browser's attempts; made when first wanted.
 *
 * It goes out in a header only, and is kept until the browser's data are cleared: whoever has no account has nothing else.
 */
export function browserKey(): string {
  made ??= kept() ?? newKey();
  try {
    localStorage.setItem(KEY, made);
  } catch {
    // Then it holds for as long as this page is open.
  }
  return made;
}

let made: string | undefined;

function kept(): string | undefined {
  try {
    const text = localStorage.getItem(KEY);
    return text !== null && /^[A-Za-z0-9_-]{32}$/.test(text) ? text : undefined;
  } catch {
    return undefined;
  }
}

/** 192 bits as base64url (RFC 4648, 5). */
function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(24));
  return btoa(String.fromCharCode(...bytes))
    .replaceAll("+", "-")
    .replaceAll("/", "_");
}
