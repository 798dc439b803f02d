/** Notes as they were written, in their order; nothing without any. */
export function NotesList({ notes }: { readonly notes: readonly string[] }) {
  if (notes.length === 0) return null;
  return (
    <ul>
      {notes.map((note, index) => (
        <li key={index} className="note">
          {note}
        </li>
      ))}
    </ul>
  );
}
