import { at } from '../materials/curve.ts';
import type { Step } from '../step.ts';
import { lossParts } from './outside.ts';
import { depthOf } from './transient/isotherms.ts';
import type { Firing } from './wall-firing.ts';
import { fuelFor_kg, heatOfFuel_J_kg } from './wall-fuel.ts';
import type { LayerModel } from './wall-layers.ts';
import { airDoubt, outsideOf, shortName, type WallModel } from './wall-question.ts';
import type { WallRun } from './wall-run.ts';

const marks_C = [450, 573, 900] as const;

/** The working of the typical run: what was looked up, what was solved, and that its heat adds up. */
export function wallSteps(model: WallModel, run: WallRun, firing: Firing): readonly Step[] {
  const { question, typical, inner_m2, outer_radius_m, fire_out_s } = model;
  const peaks_K = [question.hot_K.typical, ...firing.interface_peaks_K];
  return [
    ...model.layers.flatMap((layer, index) => lookUps(layer, peaks_K[index]!)),
    {
      formula: 'of the side wall: hot face = π × bore × height',
      inputs: { bore_m: question.bore_m, height_m: question.height_m },
      gives: { hot_face_m2: inner_m2 },
      source: 'derived',
    },
    {
      formula:
        'ρ c ∂T/∂t = (1/r) ∂/∂r (r k ∂T/∂r) in each layer, water boiled off at 100 °C, one temperature for the steel',
      inputs: {
        hot_face_K: question.hot_K.typical,
        ramp_s: question.ramp_s,
        hold_s: question.hold_s,
        air_K: typical[airDoubt]!,
        steps_count: run.steps_count,
      },
      gives: { shell_peak_K: firing.shell_peak_K, after_fire_out_s: firing.shell_peak_after_s },
      source: 'derived',
    },
    {
      formula: 'most that the hot face takes over any minute; and on average up to heat',
      inputs: { in_J: firing.in_J, ramp_s: question.ramp_s },
      gives: { most_W: firing.peak_power_W, average_W: firing.ramp_power_W },
      source: 'derived',
    },
    {
      formula:
        'how deep the wall ever passed 450 °C (hydrates of cement gone), 573 °C (quartz changes) and 900 °C (clay sinters)',
      inputs: { hot_face_K: question.hot_K.typical },
      gives: Object.fromEntries(marks_C.map((mark) => [`passed_${mark}_m`, depthOf(run, mark + 273.15)])),
      source: 'from-memory',
    },
    ...lossParts(outsideOf(question, outer_radius_m, typical), firing.shell_peak_K).steps(),
    {
      formula: 'energy over the whole run, cooling and all: in = out + left',
      inputs: {
        out_J: inner_m2 * (run.out_J_m2.at(-1) ?? 0),
        left_J: inner_m2 * run.stored_J_m2,
      },
      gives: { in_J: inner_m2 * (run.in_J_m2.at(-1) ?? 0), imbalance: run.imbalance },
      closes: true,
      source: 'derived',
    },
    {
      formula: 'when the fire is out, in through the hot face and out through the shell: stored = in − out',
      inputs: { in_J: firing.in_J, out_J: firing.passed_J, fire_out_s },
      gives: { stored_J: firing.stored_J },
      source: 'derived',
    },
    {
      formula: 'fuel whose whole heat that is: charcoal = heat ÷ charcoal heat; propane = heat ÷ propane heat',
      inputs: {
        heat_J: firing.in_J,
        charcoal_heat_J_kg: heatOfFuel_J_kg('charcoal'),
        propane_heat_J_kg: heatOfFuel_J_kg('propane'),
      },
      gives: { charcoal_kg: fuelFor_kg(firing.in_J, 'charcoal'), propane_kg: fuelFor_kg(firing.in_J, 'propane') },
      source: 'from-memory',
    },
  ];
}

function lookUps({ material, thickness_m, density_kg_m3, water }: LayerModel, hot_K: number): readonly Step[] {
  const { conductivity_W_mK: k, heat_capacity_J_kgK: c } = material;
  if (!k || !c) return [];
  return [
    {
      formula: `${shortName(material.name)}, its numbers at its hot side, from the catalogue (k ${k.standing})`,
      inputs: { thickness_m, hot_side_K: hot_K },
      gives: {
        conductivity_W_mK: at(k, hot_K).value,
        heat_capacity_J_kgK: at(c, hot_K).value,
        density_kg_m3: density_kg_m3.typical,
        water: water.typical,
      },
      source: k.source,
    },
  ];
}
