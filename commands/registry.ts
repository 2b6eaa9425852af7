import { again } from './again/again.ts';
import { blast } from './blast/blast.ts';
import { buildCompare } from './build/compare.ts';
import { buildCopy } from './build/copy.ts';
import { buildDrop } from './build/drop.ts';
import { buildList } from './build/list.ts';
import { buildSave } from './build/save.ts';
import { buildShare } from './build/share.ts';
import { buildShow } from './build/show.ts';
import { burner } from './burner/burner.ts';
import { checklist } from './checklist/checklist.ts';
import { checklistDrop } from './checklist/drop.ts';
import { checklistSheet } from './checklist/sheet.ts';
import { checklistShop } from './checklist/shop.ts';
import { checklistStart } from './checklist/start.ts';
import { checklistTick } from './checklist/tick.ts';
import { checklistUntick } from './checklist/untick.ts';
import { claim } from './claim/claim.ts';
import type { Command } from './command.ts';
import { dry } from './dry/dry.ts';
import { emergency } from './emergency/emergency.ts';
import { flame } from './flame/flame.ts';
import { forget } from './forget/forget.ts';
import { fuel } from './fuel/fuel.ts';
import { help } from './help/help.ts';
import { logBucket } from './log/bucket.ts';
import { logBurn } from './log/burn.ts';
import { logDrop } from './log/drop.ts';
import { logDrying } from './log/drying.ts';
import { logList } from './log/list.ts';
import { logShell } from './log/shell.ts';
import { logWeighed } from './log/weighed.ts';
import { melt } from './melt/melt.ts';
import { mix } from './mix/mix.ts';
import { mydata } from './mydata/mydata.ts';
import { priceDrop } from './price/drop.ts';
import { priceList } from './price/list.ts';
import { price } from './price/price.ts';
import { remindDrop } from './remind/drop.ts';
import { remindList } from './remind/list.ts';
import { remind } from './remind/remind.ts';
import { settle } from './settle/settle.ts';
import { sizeCan } from './size/can.ts';
import { sizeCrucible } from './size/crucible.ts';
import { sizeMelt } from './size/melt.ts';
import { start } from './start/start.ts';
import { stuff } from './stuff/stuff.ts';
import { touch } from './touch/touch.ts';
import { units } from './units/units.ts';
import { wall } from './wall/wall.ts';
import { weigh } from './weigh/weigh.ts';
import { why } from './why/why.ts';
import { zone } from './zone/zone.ts';

/** The one list of commands: help, completion, errors and every platform's forms are derived from it. */
export const commands: readonly Command[] = [
  start,
  sizeCan,
  sizeCrucible,
  sizeMelt,
  melt,
  mix,
  dry,
  touch,
  wall,
  fuel,
  blast,
  burner,
  flame,
  stuff,
  settle,
  claim,
  weigh,
  buildShow,
  buildSave,
  buildList,
  buildCompare,
  buildShare,
  buildCopy,
  buildDrop,
  logList,
  logBurn,
  logBucket,
  logShell,
  logWeighed,
  logDrying,
  logDrop,
  checklist,
  checklistStart,
  checklistTick,
  checklistUntick,
  checklistShop,
  checklistSheet,
  checklistDrop,
  price,
  priceList,
  priceDrop,
  remind,
  remindList,
  remindDrop,
  units,
  zone,
  mydata,
  forget,
  emergency,
  help,
  why,
  again,
];
