import { workOnceTold } from '../language/worker-language.ts';

workOnceTold(async () => (await import('./yard-work.ts')).take);
