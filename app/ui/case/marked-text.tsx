export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Text with spans marked; overlapping spans are joined. Always plain text, never markup. */
export function MarkedText({ text, spans }: { readonly text: string; readonly spans: readonly Span[] }) {
  const pieces: { readonly at: number; readonly text: string; readonly marked: boolean }[] = [];
  let at = 0;
  for (const { from, to } of [...spans].sort((a, b) => a.from - b.from)) {
    const start = Math.max(from, at);
    if (to <= start) continue;
    if (start > at) pieces.push({ at, text: text.slice(at, start), marked: false });
    pieces.push({ at: start, text: text.slice(start, to), marked: true });
    at = to;
  }
  if (at < text.length) pieces.push({ at, text: text.slice(at), marked: false });
  return (
    <>
      {pieces.map((piece) =>
        piece.marked ? <mark key={piece.at}>{piece.text}</mark> : <span key={piece.at}>{piece.text}</span>,
      )}
    </>
  );
}
