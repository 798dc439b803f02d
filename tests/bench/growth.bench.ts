import { type Answer, groundCar, proposeChecks, weighing } from "../../lib/engine/index.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { milliseconds, quantile, table } from "./timing.ts";

const SIZES = [1, 10, 100] as const;

/** How the work of one answer grows with the knowledge: the shipped one, and copies of it side by side. */
export function growthWithKnowledge(): string {
  let first: { weigh: number; next: number; links: number } | undefined;
  const rows = SIZES.map((times) => {
    const knowledge = copies(shippedKnowledge(), times);
    const grounded = groundCar(knowledge, { drive: "front", front: { layout: "strut" } });
    const [noisiest] = knowledge.complaints.toSorted(
      (a, b) => (grounded.links.get(b.id)?.length ?? 0) - (grounded.links.get(a.id)?.length ?? 0),
    );
    const answers = tell(knowledge, noisiest?.id ?? "");
    const repeats = times === 100 ? 5 : 25;
    let result = weighing(grounded, answers);
    const weigh = quantile(
      Array.from({ length: repeats }, () =>
        milliseconds(() => {
          result = weighing(grounded, answers);
        }),
      ),
      0.5,
    );
    proposeChecks(grounded, answers, result);
    const next = quantile(
      Array.from({ length: repeats }, () => milliseconds(() => proposeChecks(grounded, answers, result))),
      0.5,
    );
    const links = [...grounded.nodes.values()].reduce(
      (sum, n) => sum + n.parents.length * n.strengths.length,
      0,
    );
    first ??= { weigh, next, links };
    return [
      times,
      grounded.suspects.length,
      links,
      weigh,
      next,
      weigh / first.weigh / (links / first.links),
      next / first.next / (links / first.links),
    ];
  });
  return table(
    [
      "size",
      "suspects",
      "links",
      "weigh med ms",
      "next med ms",
      "weigh per link, ratio",
      "next per link, ratio",
    ],
    rows,
  );
}

/** The complaint with its first two moments. */
function tell(knowledge: Knowledge, complaint: string): Answer[] {
  const moments = knowledge.features
    .filter((f) => f.kind === "moment" && f.complaints.includes(complaint))
    .slice(0, 2);
  return [complaint, ...moments.map((f) => `${complaint}:${f.id}`)].map((finding) => ({
    finding,
    state: "present",
    by: "report",
  }));
}

/** The same parts, faults, observations and checks over and over under other ids; complaints are shared. */
function copies(knowledge: Knowledge, times: number): Knowledge {
  if (times === 1) return knowledge;
  const each = <T>(list: readonly T[], copy: (record: T, id: (name: string) => string) => T): T[] =>
    Array.from({ length: times }, (_, k) =>
      list.map((record) => (k === 0 ? record : copy(record, (name) => `${name}-copy-${k}`))),
    ).flat();
  return {
    ...knowledge,
    parts: each(knowledge.parts, (p, id) => ({ ...p, id: id(p.id) })),
    observations: each(knowledge.observations, (o, id) => ({ ...o, id: id(o.id) })),
    checks: each(knowledge.checks, (c, id) => ({ ...c, id: id(c.id), settles: c.settles.map(id) })),
    faults: each(knowledge.faults, (f, id) => ({
      ...f,
      id: id(f.id),
      part: id(f.part),
      links: f.links.map((l) => ({ ...l, observation: id(l.observation) })),
      decisive: f.decisive.map((d) => ({ ...d, observation: id(d.observation) })),
    })),
  };
}
