"use client";

/** Tools that are not at hand; each can be had back. */
export function MissingTools({
  tools,
  onTools,
}: {
  readonly tools: readonly string[];
  readonly onTools: (tools: readonly string[]) => void;
}) {
  if (tools.length === 0)
    return (
      <p className="small soft">
        Every tool counts as at hand. A check&apos;s card says which it takes, and under &quot;Cannot be
        done&quot; that one is not here.
      </p>
    );
  return (
    <>
      <p className="label">Not at hand: checks that need it are left out</p>
      <ul className="plain-list">
        {tools.map((tool) => (
          <li key={tool} className="last-entry">
            <span>{tool}</span>
            <button
              type="button"
              aria-label={`It is here again: ${tool}`}
              onClick={() => onTools(tools.filter((t) => t !== tool))}
            >
              Here again
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
