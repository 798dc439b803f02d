import Link from "next/link";
import { SheetPart } from "../sheet-part.tsx";

/** Ways to the screens that work figures out, for a case or without one. */
export function BenchLinks({ caseId }: { readonly caseId?: string }) {
  const of = caseId === undefined ? "" : `?case=${encodeURIComponent(caseId)}`;
  return (
    <SheetPart id="bench" title="Worked out">
      <ul className="plain-list">
        {caseId !== undefined && (
          <BenchLink
            href={`/case/wear?id=${encodeURIComponent(caseId)}`}
            name="Wear ahead"
            about="how likely each wear part has failed, and will; parts renewed"
          />
        )}
        <BenchLink
          href={`/shop/rotating${of}`}
          name="Turning parts"
          about="tyre size and speed to Hz; what a measured shake may be"
        />
        <BenchLink
          href={`/shop/shake${of}`}
          name="Measure a shake"
          about="a passenger's phone records it; which part turns at that rate"
        />
        <BenchLink
          href={`/shop/play${of}`}
          name="Free play, run-out and wear limits"
          about="mm, inches, degrees, tread and lining, beside the rules"
        />
      </ul>
    </SheetPart>
  );
}

function BenchLink({
  href,
  name,
  about,
}: {
  readonly href: string;
  readonly name: string;
  readonly about: string;
}) {
  return (
    <li className="case-line">
      <Link className="case-link" href={href}>
        <strong>{name}</strong>
        <span className="small soft">{about}</span>
      </Link>
    </li>
  );
}
