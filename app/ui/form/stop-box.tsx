import type { View } from "./view.ts";

/** What must be done about the car, before anything else is asked. */
export function StopBox({ advice }: { readonly advice: NonNullable<View["advice"]> }) {
  return (
    <section className="stop form-stop" role="alert" aria-label="Stop notice">
      <p className="stop-say">
        <span className="stop-sign">STOP</span> {advice.name}
      </p>
      <p>{advice.say}</p>
    </section>
  );
}
