import type { ItemState, StageState } from '../../core/build/progress.ts';
import type { ShopRow } from '../../core/build/shop.ts';
import { factsOf, words } from '../../core/build/stage.ts';
import { stageOf } from '../../core/build/stages.ts';
import { cautionsFor } from '../../core/hazard/cautions.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { dayOf } from '../build/family.ts';
import type { AnswerContext } from '../command.ts';
import { lineOf } from '../source.ts';
import type { Opened } from './opened.ts';
import { amountOf, costFigures, costOf, costText } from './shop.ts';
import type { ShopList } from './shop-rows.ts';
import { barOf, timeWords } from './words.ts';

type Reader = Pick<AnswerContext, 'now' | 'units' | 'commands'>;

/** One page that needs nothing else: no script, no font, no picture from elsewhere. */
export function sheetHtml(open: Opened, shop: ShopList, reader: Reader): string {
  const { list, progress, question, kind } = open;
  // What every stage would repeat.
  const everywhere = cautionsFor({ facts: ['hot-work'] });
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${safe(list.name)}: checklist</title><style>${css}</style></head><body>`,
    `<header><h1>${safe(list.name)}</h1>`,
    `<p>${safe(lineOf(question, reader.commands))}</p>`,
    `<p>${safe(barOf(progress))} ticked on ${dayOf(reader.now)}; lining ${kind.traits.lining}, fuel ${kind.traits.fuel}.</p></header>`,
    ...(shop.says === undefined ? [] : [`<p>${safe(shop.says)}</p>`]),
    ...cautionList('On every day with a fire', everywhere),
    ...progress.stages.map((at) => stageHtml(at, open, new Set(everywhere.map(({ id }) => id)))),
    shopHtml(shop, reader.units),
    '</body></html>',
  ].join('\n');
}

function stageHtml(at: StageState, open: Opened, said: ReadonlySet<string>): string {
  const { stage, number, items } = at;
  const { kind, list } = open;
  const { traits } = kind;
  const tickOf = (item: ItemState): string => {
    const tick = list.ticks.find((one) => one.item === item.id);
    return tick ? ` <small>${dayOf(tick.at)}</small>` : '';
  };
  const box = (item: ItemState) =>
    `<li><span class="box">${item.ticked || at.byLog ? '✓' : ''}</span><span><b>${item.number}</b> ${safe(item.text)}${tickOf(item)}</span></li>`;
  const before = stage.holds.flatMap((id) => {
    const held = open.progress.stages.find((one) => one.stage.id === stageOf(id)?.id);
    return held ? [`${held.number} ${held.stage.name}`] : [];
  });
  const cautions = cautionsFor({ facts: ['hot-work', ...factsOf(stage, kind)] }).filter(({ id }) => !said.has(id));
  return [
    `<section><h2>${number} ${safe(stage.name)} <small>${timeWords(stage.time_s)}</small></h2>`,
    ...(before.length > 0 ? [`<p class="hold">Not before: ${safe(before.join(', '))}.</p>`] : []),
    `<p>${safe(words(stage.do, traits))}</p>`,
    ...cautionList('What can hurt', cautions),
    `<ul class="boxes">${items.map(box).join('')}</ul>`,
    `<p><b>Done looks like:</b> ${safe(words(stage.done, traits))} <b>Goes wrong:</b> ${safe(words(stage.wrong, traits))} <small>(${stage.standing})</small></p>`,
    ...(stage.logged === undefined ? [] : ['<p class="log">Date and weight: ________ ________ ________ ________</p>']),
    '</section>',
  ].join('\n');
}

function cautionList(title: string, cautions: ReturnType<typeof cautionsFor>): readonly string[] {
  if (cautions.length === 0) return [];
  const rows = cautions.map(
    ({ severity, text, reason }) =>
      `<li>${severity === 'danger' ? '<b>Danger:</b> ' : ''}${safe(text)}${severity === 'danger' ? ` ${safe(reason)}` : ''}</li>`,
  );
  return [`<div class="hurt"><b>${title}</b><ul>${rows.join('')}</ul></div>`];
}

function shopHtml({ build, gear }: ShopList, units: UnitSystem): string {
  const rows = (all: readonly ShopRow[]) =>
    all
      .map(
        (row) =>
          `<tr><td><span class="box"></span></td><td>${safe(row.name)}${row.note === undefined ? '' : `<br><small>${safe(row.note)}</small>`}</td><td>${safe(amountOf(row, units))}</td><td>${safe(costOf(row, units))}</td><td>${safe(row.shops.join(', '))}</td></tr>`,
      )
      .join('\n');
  const head = '<tr><th></th><th>what</th><th>how much</th><th>cost</th><th>where</th></tr>';
  const costs = costFigures(build, gear).map((figure) => `${figure.label} ${costText(figure, units)}`);
  return [
    '<section class="shop"><h2>Shopping list</h2>',
    `<table>${head}${rows(build)}</table>`,
    `<h3>Gear and tools</h3><table>${head}${rows(gear)}</table>`,
    `<p>${safe(costs.join('; '))}. Common prices from memory; ends are added to ends.</p></section>`,
  ].join('\n');
}

/** Names are people's own words. */
const safe = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

const css = `
:root{color-scheme:light}
body{font:14px/1.45 system-ui,sans-serif;max-width:46rem;margin:2rem auto;padding:0 1rem;color:#1d1b18;background:#fff}
h1{font-size:1.7rem;margin:0}h2{font-size:1.1rem;margin:0 0 .3rem}h3{font-size:1rem;margin:1rem 0 .3rem}
h2 small,small{font-weight:normal;color:#5d574e;font-size:.85em}
header p{margin:.2rem 0;color:#5d574e}p{margin:.35rem 0}
section{border-top:1.5px solid #1d1b18;padding:.7rem 0;margin-top:.7rem;break-inside:avoid}
.hold{font-weight:600}
.hurt{border-left:4px solid #a3431f;padding:.15rem .7rem;margin:.5rem 0;break-inside:avoid}
.hurt ul{margin:.15rem 0;padding-left:1.1rem}
ul.boxes{list-style:none;margin:.5rem 0;padding:0}
ul.boxes li{display:flex;gap:.6rem;margin:.3rem 0;align-items:baseline}
.box{flex:none;align-self:flex-start;margin-top:.12em;display:inline-block;width:1.05em;height:1.05em;border:1.5px solid #1d1b18;text-align:center;line-height:1;vertical-align:-.15em}
table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;padding:.25rem .5rem .25rem 0;border-bottom:1px solid #cfc8bc}
.shop{break-inside:auto}tr{break-inside:avoid}
@media print{
@page{margin:12mm}body{font-size:9pt;line-height:1.3;max-width:none;margin:0;padding:0}
section{padding:.35rem 0;margin-top:.35rem}p,.hurt,ul.boxes{margin:.2rem 0}ul.boxes li{margin:.12rem 0}.shop{break-before:page}
}
`;
