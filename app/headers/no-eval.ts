import { config } from "zod/v4/core";

// Schemas would else try whether they may be compiled, which the content security policy refuses and the browser notes as a
// violation. Must run before any schema is made.
config({ jitless: true });
