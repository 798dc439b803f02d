import { PlainPage } from "./ui/plain-page.tsx";

export default function NotFound() {
  return (
    <PlainPage title="There is no such page">
      <p>The address may be mistyped or old.</p>
    </PlainPage>
  );
}
