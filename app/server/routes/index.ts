import type { Route } from "../route-description.ts";
import * as accounts from "./accounts.ts";
import * as archive from "./archive.ts";
import * as board from "./board.ts";
import * as cases from "./cases.ts";
import * as exercises from "./exercises.ts";
import * as form from "./form.ts";
import * as photos from "./photos.ts";
import * as status from "./status.ts";

/** Every route of the server; a test holds this to the files under app/api. */
export const ROUTES: readonly Route[] = [
  status,
  accounts,
  cases,
  archive,
  photos,
  exercises,
  form,
  board,
].flatMap((group) => Object.values(group));
