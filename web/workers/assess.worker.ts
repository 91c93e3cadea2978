import { workOnceTold } from '../language/worker-language.ts';

workOnceTold(async () => (await import('./assess-work.ts')).take);
