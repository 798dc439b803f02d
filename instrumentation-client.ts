// Run by the framework before anything else of a page.
import "./app/headers/no-eval.ts";
