import { AskError } from '../ask-error.ts';
import { shellFactsIn } from '../hazard/words.ts';
import { readQuantity } from '../quantity/parse.ts';
import { finder, nameKey, vessels } from './catalogue.ts';
import { nearest } from './nearest.ts';
import type { Vessel } from './vessel.ts';

const findNamed = finder('vessel', vessels);

/** Says nothing of the size, or only what every vessel here is. */
const idle =
  /\b(?:an?|the|my|our|old|new|used|empty|clean|steel|metal|u\.?s|american|nominal|standard|size[ds]?)\b\.?/gi;
const sameKind: readonly (readonly [RegExp, string])[] = [
  [/\b(?:garbage|rubbish|refuse|waste|ash) (?:can|bin)s?\b|\bgarbage pails?\b|\b(?:trash|dust) bins?\b/gi, 'trash can'],
  [/\bbarrels?\b/gi, 'drum'],
  [/\bbuckets?\b/gi, 'pail'],
];

/** Vessels that may be offered to somebody who named another: nothing that is dangerous to open. */
const offered = vessels.filter(({ hazards }) => !hazards.some((fact) => ['cylinder', 'sealed-vessel'].includes(fact)));

/**
 * A vessel of the catalogue by id, name or alias, in the words people have for it.
 * @throws AskError `refused` for what keeps gas under pressure and is none of those listed; `unknown-name` with the
 * nearest ids, by volume where one is named.
 */
export function findVessel(text: string): Vessel {
  const found = lookUp(text) ?? lookUp(plainly(text));
  if (found) return found;
  refuseClosedShell(text);
  const near = nearVessels(text);
  throw new AskError({
    code: 'unknown-name',
    what: `no vessel is called "${text.slice(0, 60)}"`,
    expected: `one of those listed, perhaps ${near.join(', ')}`,
    example: near[0]!,
  });
}

/** @throws AskError for a gas cylinder or a closed vessel: neither its name nor its sizes make a shell of it. */
export function refuseClosedShell(text: string): void {
  const facts = shellFactsIn(text);
  if (facts.length === 0) return;
  const what = facts.includes('cylinder')
    ? 'names a gas cylinder or tank: of an unknown gas, or of any but propane, it is never cut or opened up for a shell'
    : 'names a closed vessel: what was in it is still there as vapour, and it is not cut for a shell';
  throw new AskError({
    code: 'refused',
    what: `"${text.slice(0, 60)}" ${what}`,
    expected: 'an open-head steel drum or a can, by name or by its inside sizes; never a cylinder',
    example: '20 gal can',
    option: 'vessel',
    facts,
  });
}

function lookUp(text: string): Vessel | undefined {
  try {
    return findNamed(text);
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

const plainly = (text: string): string =>
  sameKind.reduce((said, [pattern, word]) => said.replace(pattern, word), text.replace(idle, ' ')).trim();

/** By volume where one is named, then by name: who says 75 L has no pail in mind. */
function nearVessels(text: string): readonly string[] {
  const said = plainly(text);
  const key = nameKey(said);
  const spelled = offered.flatMap(({ id, name, aliases }) =>
    [id, name, ...aliases].map((one) => ({ id, key: nameKey(one) })),
  );
  const byName = [
    ...new Set(
      nearest(
        key,
        spelled.map((one) => one.key),
        spelled.length,
      ).map((one) => spelled.find((other) => other.key === one)!.id),
    ),
  ];
  const wanted_m3 = volumeIn(said);
  if (wanted_m3 === undefined) return byName.slice(0, 3);
  const off = (id: string): number => {
    const { stated_volume_m3 } = offered.find((one) => one.id === id)!;
    // Within a tenth two vessels are one size, and the name decides.
    return Math.round(Math.abs(Math.log(stated_volume_m3.typical / wanted_m3)) / 0.1);
  };
  return byName.toSorted((a, b) => off(a) - off(b)).slice(0, 3);
}

function volumeIn(text: string): number | undefined {
  const [typed] = /\d[\d.,/ ]*\s*-?(?:gal(?:lon)?s?|l|lit(?:re|er)s?|q(?:uar)?ts?)\b/i.exec(text) ?? [];
  if (typed === undefined) return undefined;
  try {
    return readQuantity(typed.replace(/(?<=\d)-/, ' '), { dimensions: ['volume'] }).si;
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}
