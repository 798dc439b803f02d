import ready from "../../../../knowledge/exercises/harbour-lane.json";
import { json } from "../../../server/reply.ts";
import { readReadyExercises } from "../../../server/routes/exercises.ts";
import { serve } from "../../../server/serve.ts";

export const GET = serve(readReadyExercises, () => json(ready));
