import '../calibrate/main.ts';
