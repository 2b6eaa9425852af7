import { AskError } from '../ask-error.ts';
import type { Part } from './recipe.ts';

/** What can take an ingredient's place, best first, and what changes. Common practice or memory, as `standing` says. */
interface StandIn {
  readonly for: string;
  readonly use: string;
  readonly changes: string;
}

const standIns: readonly StandIn[] = [
  { for: 'stoneware-clay', use: 'fireclay', changes: 'holds hotter; a little shorter to ram, so add water slowly' },
  { for: 'stoneware-clay', use: 'ball-clay', changes: 'sticks well and shrinks more: use three of sand' },
  { for: 'stoneware-clay', use: 'kaolin', changes: 'holds hotter, but is short and needs hard ramming' },
  {
    for: 'stoneware-clay',
    use: 'earthenware-clay',
    changes: 'for aluminium and zinc only: it softens above about 1000 °C',
  },
  { for: 'stoneware-clay', use: 'garden-clay', changes: 'test a fired bar first: for aluminium at best' },
  { for: 'fireclay', use: 'kaolin', changes: 'as refractory, but short: ram harder' },
  { for: 'fireclay', use: 'stoneware-clay', changes: 'limit falls by about 100 K; fine for aluminium and brass' },
  { for: 'fireclay', use: 'ball-clay', changes: 'shrinks more: add sand or grog' },
  { for: 'fireclay', use: 'earthenware-clay', changes: 'for aluminium and zinc only: it softens above about 1000 °C' },
  { for: 'silica-sand', use: 'grog', changes: 'better: no quartz jump at 573 °C, fewer cracks' },
  { for: 'silica-sand', use: 'dry-sand', changes: 'wash and sieve it; salt and shell lower the limit' },
  { for: 'grog', use: 'silica-sand', changes: 'more cracking near 573 °C: heat slowly there' },
  { for: 'grog', use: 'expanded-clay', changes: 'lighter and weaker; crush and sieve it' },
  { for: 'perlite', use: 'vermiculite', changes: 'heavier, takes more water, tolerates more heat' },
  { for: 'vermiculite', use: 'perlite', changes: 'lighter; softens earlier, keep it below 650 °C' },
  { for: 'perlite', use: 'sawdust', changes: 'burns out and leaves pores: weaker, and it smokes' },
  { for: 'portland-cement', use: 'aluminate-cement', changes: 'better: holds hotter' },
];

/** Swaps what is not at hand for what is; `changes` says what that does. Throws AskError `impossible` where nothing serves. */
export function withWhatIsAtHand(
  parts: readonly Part[],
  atHand: readonly string[],
): { parts: readonly Part[]; changes: readonly string[] } {
  const changes: string[] = [];
  const swapped = parts.map((part): Part => {
    if (atHand.includes(part.material)) return part;
    const found = standIns.find((one) => one.for === part.material && atHand.includes(one.use));
    if (!found) throw missing(part.material);
    changes.push(`${found.use.replaceAll('-', ' ')} for ${part.material.replaceAll('-', ' ')}: ${found.changes}`);
    return { ...part, material: found.use };
  });
  return { parts: swapped, changes };
}

function missing(material: string): AskError {
  const others = standIns.filter((one) => one.for === material).map(({ use }) => use.replaceAll('-', ' '));
  return new AskError({
    code: 'impossible',
    what: `nothing you have takes the place of ${material.replaceAll('-', ' ')}`,
    expected: others.length > 0 ? `one of ${others.join(', ')}` : 'buy it, or choose another recipe',
    example: 'mix 30 L have=stoneware clay, silica sand',
    option: 'have',
  });
}
