/** Questions to a worker by their kind, and what each is answered with. */
export type Asked<Q> = { readonly [K in keyof Q]: { readonly ask: unknown; readonly answer: unknown } };

/** Page to worker: the knowledge first, then questions. */
export type ToWorker<Q extends Asked<Q>> =
  | { readonly kind: "load"; readonly knowledge: string; readonly isNewest: boolean }
  | { [K in keyof Q]: { readonly kind: K; readonly id: number; readonly ask: Q[K]["ask"] } }[keyof Q];

/** Worker to page. */
export type FromWorker =
  | { readonly id: number; readonly answer: unknown }
  | { readonly id: number; readonly failed: string };
