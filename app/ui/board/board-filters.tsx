"use client";
import { Choice } from "../choice.tsx";
import { Fold } from "../fold.tsx";
import type { Filter } from "./filter.ts";
import type { Choices } from "./replies.ts";

const ENDED = [
  { value: "", name: "All" },
  { value: "yes", name: "With a verdict" },
  { value: "no", name: "Still at work" },
] as const;

interface FilterProps {
  readonly filter: Filter;
  readonly choices: Choices;
  readonly onFilter: (filter: Filter) => void;
}

/** What the board is narrowed to; it stands in the address, so that it can be kept and passed on. */
export function BoardFilters(props: FilterProps) {
  const picked = pickedWords(props);
  return (
    <Fold title={`Pick attempts: ${picked === "" ? "all" : picked}`}>
      <Picks {...props} />
    </Fold>
  );
}

/** What is picked, in words, so that it is seen while the fields are shut; empty for all. */
function pickedWords({ filter, choices }: FilterProps): string {
  const { exercise, trainee, course, ended, from, until } = filter;
  const days = `${from === "" ? "" : `from ${from}`} ${until === "" ? "" : `until ${until}`}`.trim();
  return [
    exercise && (choices.exercises.find(({ id }) => id === exercise)?.name ?? exercise),
    trainee && (choices.trainees.find(({ id, name }) => (id ?? name) === trainee)?.name ?? trainee),
    course,
    ended && (ended === "yes" ? "with a verdict" : "still at work"),
    days,
  ]
    .filter((words) => words !== "")
    .join(", ");
}

function Picks({ filter, choices, onFilter }: FilterProps) {
  const set = (change: Partial<Filter>): void => onFilter({ ...filter, ...change });
  const any = Object.values(filter).some((value) => value !== "");
  return (
    <div className="fields board-filters" role="search" aria-label="Attempts">
      <Choice
        id="board-exercise"
        label="Exercise"
        value={filter.exercise}
        options={[
          { value: "", name: "All exercises" },
          ...choices.exercises.map(({ id, name }) => ({ value: id, name })),
        ]}
        onChange={(exercise) => set({ exercise })}
      />
      <Choice
        id="board-trainee"
        label="Trainee"
        value={filter.trainee}
        options={[
          { value: "", name: "Everybody" },
          ...choices.trainees.map(({ id, name }) => ({
            value: id ?? name,
            name: id === null ? `${name} (typed)` : name,
          })),
        ]}
        onChange={(trainee) => set({ trainee })}
      />
      {choices.courses.length > 0 && (
        <Choice
          id="board-course"
          label="Course"
          value={filter.course}
          options={[
            { value: "", name: "All courses" },
            ...choices.courses.map((course) => ({ value: course, name: course })),
          ]}
          onChange={(course) => set({ course })}
        />
      )}
      <Choice
        id="board-ended"
        label="Attempts"
        value={filter.ended}
        options={ENDED}
        onChange={(ended) => set({ ended })}
      />
      <Day id="board-from" label="Begun from" value={filter.from} onChange={(from) => set({ from })} />
      <Day id="board-until" label="Begun until" value={filter.until} onChange={(until) => set({ until })} />
      {any && (
        <button
          type="button"
          onClick={() => onFilter({ exercise: "", trainee: "", course: "", ended: "", from: "", until: "" })}
        >
          Show all attempts
        </button>
      )}
    </div>
  );
}

function Day({
  id,
  label,
  value,
  onChange,
}: {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (day: string) => void;
}) {
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      <input id={id} type="date" value={value} onChange={(event) => onChange(event.target.value)} />
    </div>
  );
}
