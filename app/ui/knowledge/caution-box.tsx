/** Cautions, where the work that asks for them begins. */
export function CautionBox({ texts }: { readonly texts: readonly string[] }) {
  if (texts.length === 0) return null;
  return (
    <div className="cautions" role="group" aria-label="Cautions">
      <p>
        <strong>Before you start</strong>
      </p>
      <ul>
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  );
}
