import type { Planting } from '../../analysis/answer/life.ts';
import {
  HARVEST_CALENDARS,
  PICKINGS,
  usualCalendar,
  type HarvestCalendar,
} from '../../analysis/tree/harvest.ts';

/** Oldest tree a nursery sells that is told of, years. */
export const START_AGE_MAX = 5;

/** A planting as a link has it, and what to say where the link makes no sense. */
export interface PlantingReading {
  readonly planting: Planting;
  readonly problem: string | null;
}

/** What the page assumes: a young tree, its fruit left hanging, the months usual at the place. */
export function usualPlanting(calendar: HarvestCalendar): Planting {
  return { startAgeYears: 1, picking: 'late', calendar };
}

/** Reads `AGE,PICKING,CALENDAR`, such as `2,early,gulf`; `null` is the usual planting, and so is a text that makes no sense. */
export function readPlantingText(text: string | null, usual: HarvestCalendar): PlantingReading {
  if (text === null) return { planting: usualPlanting(usual), problem: null };
  const parts = text.split(',');
  const startAgeYears = /^[1-9]$/.test(parts[0]) ? Number(parts[0]) : NaN;
  const picking = PICKINGS.find((entry) => entry === parts[1]);
  const calendar = HARVEST_CALENDARS.find((entry) => entry === parts[2]);
  if (parts.length !== 3 || !(startAgeYears <= START_AGE_MAX) || !picking || !calendar) {
    const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
    const problem =
      `The link’s planting “${shown}” is none of ours, so the usual one is shown: it takes a year from 1 to ${START_AGE_MAX}, ` +
      `${PICKINGS.join(' or ')}, and ${HARVEST_CALENDARS.join(' or ')}.`;
    return { planting: usualPlanting(usual), problem };
  }
  return { planting: { startAgeYears, picking, calendar }, problem: null };
}

/** The same at a place, whose months are the usual ones. */
export function plantingAt(
  text: string | null,
  place: { readonly lat: number; readonly lon: number } | null,
): PlantingReading {
  return readPlantingText(text, usualCalendar(place?.lat ?? 0, place?.lon ?? 0));
}

/** The text of a planting; `undefined` for the usual one, which a link need not name. */
export function writePlantingText(planting: Planting, usual: HarvestCalendar): string | undefined {
  const { startAgeYears, picking, calendar } = planting;
  const same = usualPlanting(usual);
  if (startAgeYears === same.startAgeYears && picking === same.picking && calendar === same.calendar)
    return undefined;
  return `${startAgeYears},${picking},${calendar}`;
}
