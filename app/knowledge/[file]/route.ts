import { INDEX_FILE, releaseFile, type ReleaseIndex } from "../release-index.ts";
import { siteReleases } from "../site-releases.ts";

export const dynamic = "force-static";
export const dynamicParams = false;

interface Props {
  readonly params: Promise<{ readonly file: string }>;
}

const JSON_TYPE = "application/json; charset=utf-8";

export async function generateStaticParams(): Promise<{ file: string }[]> {
  const releases = await siteReleases();
  return [{ file: INDEX_FILE }, ...releases.map(({ sha256 }) => ({ file: releaseFile(sha256) }))];
}

/** The list of versions of the knowledge, or the text of one of them under the sum of its bytes; made at build time. */
export async function GET(_request: Request, { params }: Props): Promise<Response> {
  const { file } = await params;
  const releases = await siteReleases();
  if (file === INDEX_FILE) {
    const index: ReleaseIndex = releases.map(({ knowledge, sha256, frozen }) => ({
      version: knowledge.version,
      sha256,
      frozen,
    }));
    return Response.json(index, { headers: { "Content-Type": JSON_TYPE, "Cache-Control": "no-cache" } });
  }
  const release = releases.find(({ sha256 }) => releaseFile(sha256) === file);
  if (release === undefined) return new Response(null, { status: 404 });
  return new Response(release.text, {
    headers: { "Content-Type": JSON_TYPE, "Cache-Control": "public, max-age=31536000, immutable" },
  });
}
