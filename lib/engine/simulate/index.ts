export { drawCar } from "./draw-car.ts";
export type { DrawOptions } from "./draw-car.ts";
export { perturbedKnowledge } from "./perturbed-knowledge.ts";
export { perturbedWorld } from "./perturbed-world.ts";
export { checkResult, gradeFound, questionResult } from "./results.ts";
export { firedSuspects } from "./simulated-car.ts";
export type { FiredShowing, SimulatedCar } from "./simulated-car.ts";
export { toldFeatures } from "./told-features.ts";
