/**
 * An address that opens a message in the device's own mail program (RFC 6068): every character of subject and body is
 * percent-encoded, lines end in CR and LF.
 */
export function mailAddress({ subject, body }: { readonly subject: string; readonly body: string }): string {
  const encoded = (text: string): string => encodeURIComponent(wellFormed(text).replace(/\r?\n/g, "\r\n"));
  return `mailto:?subject=${encoded(subject)}&body=${encoded(body)}`;
}

/** Half of a pair of surrogates (a paste that was cut) cannot be encoded. */
function wellFormed(text: string): string {
  return text.replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g, "\uFFFD");
}
