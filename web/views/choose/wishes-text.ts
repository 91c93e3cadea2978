import { WISH_LIMITS } from '../../../analysis/answer/choose-wishes.ts';
import type { Wishes } from '../../../analysis/answer/choosing.ts';
import { t } from '../../../analysis/language/t.ts';
import type { Use } from '../../../analysis/tree/catalogue.ts';

/** Kinds of fruit as they are asked for. Rootstocks are no one's fruit: only who asks for all gets them. */
export const KINDS: Readonly<Record<Kind, { readonly label: string; readonly uses: readonly Use[] }>> = {
  eating: { label: t`To eat fresh`, uses: ['eating'] },
  cooking: { label: t`To cook with`, uses: ['cooking'] },
  both: { label: t`Either`, uses: ['eating', 'cooking'] },
  all: { label: t`Rootstocks too`, uses: ['eating', 'cooking', 'rootstock'] },
};
export type Kind = 'eating' | 'cooking' | 'both' | 'all';

/** The wishes of who said nothing: either kind, a few nights of work, fruit in four years of five, most trees alive after ten. */
export const USUAL_WISHES: Wishes = {
  kinds: KINDS.both.uses,
  nightsToCover: 5,
  lostCropsInTen: 2,
  yearsToWait: 4,
  livingInTen: 8,
};

const ORDER = ['nightsToCover', 'lostCropsInTen', 'yearsToWait', 'livingInTen'] as const;

/** Wishes as a link has them, and what to say where the link makes no sense. */
export interface WishesReading {
  readonly wishes: Wishes;
  readonly problem: string | null;
}

/** Reads `KIND,NIGHTS,CROPS,YEARS,TREES`, such as `eating,5,2,4,8`; `null` is the usual, and so is a text that makes no sense. */
export function readWishesText(text: string | null): WishesReading {
  if (text === null) return { wishes: USUAL_WISHES, problem: null };
  const [kind, ...figures] = text.split(',');
  const wishes: Wishes | null = isKind(kind)
    ? {
        kinds: KINDS[kind].uses,
        nightsToCover: Number(figures[0]),
        lostCropsInTen: Number(figures[1]),
        yearsToWait: Number(figures[2]),
        livingInTen: Number(figures[3]),
      }
    : null;
  const plain = figures.length === ORDER.length && figures.every((figure) => /^\d{1,2}$/.test(figure));
  if (wishes && plain && ORDER.every((wish) => within(wish, wishes[wish]))) return { wishes, problem: null };
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  const limits = ORDER.map((wish) => t`${WISH_LIMITS[wish].least} to ${WISH_LIMITS[wish].most}`);
  return {
    wishes: USUAL_WISHES,
    problem: t`The link’s wishes “${shown}” are none of ours, so the usual ones stand: they take ${Object.keys(KINDS).join(', ')}, then nights (${limits[0]}), crops (${limits[1]}), years (${limits[2]}) and trees (${limits[3]}).`,
  };
}

/** The text of wishes; `undefined` for the usual ones, which a link need not name. */
export function writeWishesText(wishes: Wishes): string | undefined {
  const text = plainText(wishes);
  return text === plainText(USUAL_WISHES) ? undefined : text;
}

/** The kind of fruit that wishes ask for. */
export function kindOf({ kinds }: Pick<Wishes, 'kinds'>): Kind {
  const found = Object.entries(KINDS).find(
    ([, { uses }]) => uses.length === kinds.length && uses.every((use) => kinds.includes(use)),
  );
  return found ? (found[0] as Kind) : 'both';
}

function plainText(wishes: Wishes): string {
  return [kindOf(wishes), ...ORDER.map((wish) => wishes[wish])].join(',');
}

function isKind(text: string): text is Kind {
  return Object.hasOwn(KINDS, text);
}

function within(wish: (typeof ORDER)[number], value: number): boolean {
  return value >= WISH_LIMITS[wish].least && value <= WISH_LIMITS[wish].most;
}
