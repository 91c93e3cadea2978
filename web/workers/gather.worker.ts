import { workOnceTold } from '../language/worker-language.ts';

workOnceTold(async () => (await import('./gather-work.ts')).take);
