import type { PlanPoint } from '../yard.ts';

/** Corners of a rectangle with sides along the compass: from its south-west to its north-east corner. */
export function rectangle(westM: number, southM: number, eastM: number, northM: number): PlanPoint[] {
  return [
    [westM, southM],
    [eastM, southM],
    [eastM, northM],
    [westM, northM],
  ];
}

const CROWN_CORNERS = 8;

/** A round crown as eight corners, rounded to the plan's 0.05 m. */
export function crown(eastM: number, northM: number, radiusM: number): PlanPoint[] {
  return Array.from({ length: CROWN_CORNERS }, (_, at): PlanPoint => {
    const turn = ((at + 0.5) * 2 * Math.PI) / CROWN_CORNERS;
    const place = (middleM: number, part: number) => Math.round((middleM + radiusM * part) * 20) / 20;
    return [place(eastM, Math.cos(turn)), place(northM, Math.sin(turn))];
  });
}
