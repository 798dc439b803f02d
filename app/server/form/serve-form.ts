import type { Link } from "../../../lib/store/index.ts";
import { json } from "../reply.ts";
import type { Route } from "../route-description.ts";
import { type Asked, serveOpened } from "../serve.ts";
import { formLink } from "./form-link.ts";
import { formView } from "./form-view.ts";

/** A route of the form: does what is asked, then gives the form as it stands. The link is looked up before a body is read. */
export function serveForm<R extends Route>(
  route: R,
  act: (asked: Asked<R>, link: Link) => Promise<void>,
  { use = "form", ends = false }: { readonly use?: "form" | "photo"; readonly ends?: boolean } = {},
) {
  return serveOpened<R, Link>(
    route,
    async (asked, link) => {
      await act(asked, link);
      return json(await formView(asked.server, ends ? { ...link, doneAt: link.doneAt ?? asked.now } : link));
    },
    ({ store }, request, now) => formLink(store, request, now, use),
  );
}
