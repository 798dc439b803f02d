import Link from "next/link";
import { SiteHead } from "./ui/site-head.tsx";

export default function NotFound() {
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet">
        <h1>There is no such page</h1>
        <p>The address may be mistyped or old.</p>
        <p>
          <Link className="button" href="/">
            All cases
          </Link>
        </p>
      </main>
    </>
  );
}
