import Link from "next/link";

/** Foot of the pages that are there to be read: where the knowledge itself is accounted for, exercises, and who is signed in. */
export function SiteFoot() {
  return (
    <footer className="site-foot">
      <nav aria-label="About the knowledge">
        <Link href="/releases" prefetch={false}>
          Versions of the knowledge
        </Link>
        <Link href="/health" prefetch={false}>
          Health of the knowledge
        </Link>
      </nav>
      <nav aria-label="Exercises and account">
        <Link href="/exercise" prefetch={false}>
          Work an exercise
        </Link>
        <Link href="/teach" prefetch={false}>
          Exercises to hand out
        </Link>
        <Link href="/account" prefetch={false}>
          Account
        </Link>
      </nav>
    </footer>
  );
}
