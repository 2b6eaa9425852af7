import { finder } from '../../materials/catalogue.ts';
import { datum, MEMORY, published } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';

/** A kind of blower as found in a house, where its plate says nothing usable. Both ends are wide on purpose. */
export interface Blower {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly free_flow_m3_s: Datum;
  readonly shut_off_Pa: Datum;
  /** What its owner should know before putting it to a furnace. */
  readonly remark: string;
}

const litres = (low: number, typical: number, high: number): [number, number, number] => [
  low / 1000,
  typical / 1000,
  high / 1000,
];

export const blowers: readonly Blower[] = [
  {
    id: 'hair-dryer',
    name: 'hair dryer',
    aliases: ['hairdryer', 'blow dryer', 'hair drier'],
    free_flow_m3_s: datum(...litres(10, 20, 31), published('hair-dryer-exercise'), 'An exercise gives 31 L/s.'),
    shut_off_Pa: datum(150, 350, 900, MEMORY),
    remark: 'On cold. Choked, its heater trips or melts the case; let it run on after the fire.',
  },
  {
    id: 'bathroom-fan',
    name: 'bathroom fan',
    aliases: ['extractor fan', 'exhaust fan', 'vent fan'],
    free_flow_m3_s: datum(...litres(20, 30, 50), MEMORY),
    shut_off_Pa: datum(30, 70, 150, MEMORY),
    remark: 'Moves much against nothing: only with a wide, short duct.',
  },
  {
    id: 'squirrel-cage-fan',
    name: 'squirrel-cage fan',
    aliases: ['squirrel cage', 'centrifugal fan', 'furnace fan', 'cage blower'],
    free_flow_m3_s: datum(...litres(25, 50, 120), MEMORY),
    shut_off_Pa: datum(80, 200, 450, MEMORY),
    remark: 'Blowing freely a forward-curved wheel can overload its motor: keep a gate on it.',
  },
  {
    id: 'airbed-inflator',
    name: 'inflator for air beds',
    aliases: ['air bed inflator', 'mattress pump', 'airbed pump', 'inflator'],
    free_flow_m3_s: datum(...litres(5, 9, 15), MEMORY),
    shut_off_Pa: datum(2000, 3500, 6000, MEMORY),
    remark: 'Made for minutes, not hours: its motor needs rest.',
  },
  {
    id: 'vacuum-cleaner',
    name: 'vacuum cleaner, blowing side',
    aliases: ['vacuum', 'vacuum cleaner', 'dust extractor'],
    free_flow_m3_s: datum(...litres(25, 38, 45), published('niosh-mortar-dust'), 'One extractor: fitted 41 L/s.'),
    shut_off_Pa: datum(10e3, 18e3, 22e3, published('vacuum-specifications')),
    remark: 'Its motor is cooled by the air it moves: never choke it, bleed the surplus off.',
  },
  {
    id: 'shop-vacuum',
    name: 'shop vacuum, blowing side',
    aliases: ['shop vac', 'wet vac', 'workshop vacuum'],
    free_flow_m3_s: datum(...litres(30, 45, 70), MEMORY),
    shut_off_Pa: datum(9e3, 15e3, 22e3, MEMORY),
    remark: 'Far more than a furnace takes: a bleed or a speed control, and ear muffs.',
  },
  {
    id: 'leaf-blower',
    name: 'leaf blower',
    aliases: ['leafblower', 'garden blower'],
    free_flow_m3_s: datum(...litres(90, 170, 260), MEMORY),
    shut_off_Pa: datum(2500, 4000, 7000, MEMORY),
    remark: 'Throws embers: start low, with a gate, and never on a lit open bed at full speed.',
  },
  {
    id: 'forge-blower',
    name: 'forge blower',
    aliases: ['forge fan', 'hand crank blower', 'blacksmith blower'],
    free_flow_m3_s: datum(...litres(20, 60, 150), MEMORY),
    shut_off_Pa: datum(250, 600, 1500, MEMORY),
    remark: 'Made for this; a gate or the crank sets it.',
  },
];

/** @throws AskError `unknown-name`, with the nearest ids. */
export const findBlower = finder('blower', blowers);
