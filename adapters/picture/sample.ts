import type { Chart } from '../../commands/card.ts';
import type { Area, Drawing, Matter, Point } from '../../core/shape/drawing.ts';

const mm = 1e-3;
const rectangle = (left: number, bottom: number, right: number, top: number): readonly Point[] =>
  [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ].map(([x, y]) => [x! * mm, y! * mm] as const);

const area = (name: string, matter: Matter, outline: readonly Point[]): Area => ({
  kind: 'area',
  name,
  matter,
  outline,
});
const at = (x: number, y: number): Point => [x * mm, y * mm];

/** A furnace cut through its axis, for tests; its numbers are made up. */
export const sampleDrawing: Drawing = {
  id: 'section',
  title: 'Cross-section through the tuyere',
  alt: 'A lined can 340 mm across and 400 mm tall with a 180 mm bore, a crucible on a plinth and a lid with a vent.',
  shapes: [
    area('steel shell', 'shell', rectangle(-172, -2, -170, 400)),
    area('steel shell', 'shell', rectangle(170, -2, 172, 400)),
    area('steel shell', 'shell', rectangle(-170, -2, 170, 0)),
    area('insulation', 'insulation', rectangle(-170, 0, 170, 40)),
    area('insulation', 'insulation', rectangle(-170, 40, -130, 400)),
    area('insulation', 'insulation', rectangle(130, 40, 170, 400)),
    area('hot-face lining', 'hot face', rectangle(-130, 40, 130, 80)),
    area('hot-face lining', 'hot face', rectangle(-130, 80, -90, 400)),
    area('hot-face lining', 'hot face', rectangle(90, 80, 130, 400)),
    area('hot-face lining', 'hot face', rectangle(-150, 408, -40, 460)),
    area('hot-face lining', 'hot face', rectangle(40, 408, 150, 460)),
    area('plinth', 'ground', rectangle(-50, 80, 50, 140)),
    area('crucible', 'crucible', [
      at(-45, 140),
      at(45, 140),
      at(62, 290),
      at(52, 290),
      at(37, 152),
      at(-37, 152),
      at(-52, 290),
      at(-62, 290),
    ]),
    area('metal', 'metal', [at(-37, 152), at(37, 152), at(49, 262), at(-49, 262)]),
    area('tuyere sleeve', 'sleeve', [at(90, 110), at(172, 122), at(172, 128), at(90, 116)]),
    area('tuyere sleeve', 'sleeve', [at(90, 150), at(172, 162), at(172, 168), at(90, 156)]),
    { kind: 'line', name: 'axis', stroke: 'axis', points: [at(0, -15), at(0, 480)] },
    { kind: 'line', name: '', stroke: 'hidden', points: [at(-90, 400), at(90, 400)] },
  ],
  marks: [
    { kind: 'length', name: 'bore', from: at(-90, 340), to: at(90, 340), off_m: 0 },
    { kind: 'length', name: 'can', from: at(-172, 0), to: at(172, 0), off_m: -50 * mm },
    { kind: 'length', name: 'inside height', from: at(-172, 0), to: at(-172, 400), off_m: 70 * mm },
    { kind: 'length', name: 'bore height', from: at(-90, 80), to: at(-90, 400), off_m: -20 * mm },
    { kind: 'length', name: 'wall', from: at(-130, 370), to: at(-90, 370), off_m: 0 },
    { kind: 'length', name: 'insulation', from: at(130, 370), to: at(170, 370), off_m: 0 },
    { kind: 'length', name: 'floor', from: at(-110, 40), to: at(-110, 80), off_m: 0 },
    { kind: 'length', name: 'under the floor', from: at(110, 0), to: at(110, 40), off_m: 0 },
    { kind: 'length', name: 'plinth', from: at(50, 80), to: at(50, 140), off_m: 0 },
    { kind: 'length', name: 'crucible', from: at(-62, 290), to: at(62, 290), off_m: 18 * mm },
    { kind: 'length', name: 'lid', from: at(150, 408), to: at(150, 460), off_m: -40 * mm },
    { kind: 'length', name: 'vent', from: at(-40, 460), to: at(40, 460), off_m: 25 * mm },
    { kind: 'length', name: 'shell', from: at(170, 250), to: at(172, 250), off_m: 0 },
    { kind: 'length', name: 'gap', from: at(-150, 400), to: at(-150, 408), off_m: 0 },
    { kind: 'length', name: 'tuyere', from: at(172, 128), to: at(172, 162), off_m: -45 * mm },
    { kind: 'angle', name: 'tilt', corner: at(90, 133), from: at(172, 133), to: at(172, 145) },
    { kind: 'callout', text: 'flame goes round here & up <slowly>', at: at(75, 220), words: at(215, 250) },
  ],
};

/** A pattern larger than a sheet of paper. */
export const samplePattern: Drawing = {
  id: 'inner-form',
  title: 'Inner form, flat',
  alt: 'A strip 585 mm long and 320 mm tall with a 20 mm overlap.',
  fullSize: true,
  shapes: [
    area('sheet', 'sheet', rectangle(0, 0, 585, 320)),
    { kind: 'line', name: 'cut', stroke: 'cut', points: [...rectangle(0, 0, 585, 320), at(0, 0)] },
    { kind: 'line', name: 'overlap begins here', stroke: 'fold', points: [at(565, 0), at(565, 320)] },
  ],
  marks: [
    { kind: 'length', name: 'round the form', from: at(0, 320), to: at(565, 320), off_m: 30 * mm },
    { kind: 'length', name: 'height', from: at(0, 0), to: at(0, 320), off_m: 30 * mm },
    { kind: 'length', name: 'overlap', from: at(565, 0), to: at(585, 0), off_m: -15 * mm },
  ],
};

const zero_C = 273.15;
const minutes = Array.from({ length: 61 }, (_, at) => at * 4);
const rise = (t: number) => 1 - Math.exp(-t / 25);
const face = (t: number) => zero_C + (t <= 60 ? 20 + 1150 * rise(t) : 20 + 1150 * rise(60) * Math.exp(-(t - 60) / 55));
const shell = (t: number) => zero_C + 20 + 62 * Math.exp(-(((t - 105) / 62) ** 2)) - 62 * Math.exp(-((105 / 62) ** 2));
const curve = (of: (t: number) => number) => minutes.map((t) => [t * 60, of(t)] as const);

/** A run of a furnace, for tests; its numbers are made up. */
export const sampleChart: Chart = {
  title: 'One melt, then left to cool with the lid on',
  alt: 'The hot face reaches 1066 °C and the shell peaks at 81 °C, 45 minutes after the fire is out.',
  x: { label: 'time since lighting', unit: 's', shown: 'minutes' },
  panels: [
    {
      y: { label: 'in the wall', unit: 'K' },
      series: [
        { name: 'hot face', points: curve(face) },
        {
          name: 'between the layers',
          points: curve((t) => zero_C + 20 + (face(Math.max(0, t - 18)) - zero_C - 20) * 0.55),
        },
      ],
      lines: [{ name: 'fire out', at: 3600, axis: 'x' }],
    },
    {
      y: { label: 'shell', unit: 'K' },
      series: [{ name: 'shell', points: curve(shell) }],
      bands: [
        {
          name: 'shell',
          points: minutes.map((t) => [t * 60, 288 + (shell(t) - 288) * 0.82, 288 + (shell(t) - 288) * 1.2] as const),
        },
      ],
      lines: [
        { name: 'bare skin for 10 min', at: zero_C + 43, axis: 'y' },
        { name: 'a minute', at: zero_C + 50, axis: 'y' },
        { name: 'a few seconds', at: zero_C + 60, axis: 'y' },
        { name: 'burns at once', at: zero_C + 70, axis: 'y' },
        { name: 'fire out', at: 3600, axis: 'x' },
      ],
    },
  ],
};
