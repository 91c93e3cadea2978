/** What the map needs once a surface has come: fetched then, not with the first screen. */
export { default as SurfaceLegend } from './SurfaceLegend.svelte';
export { default as SurfaceParts } from './SurfaceParts.svelte';
