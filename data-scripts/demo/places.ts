/** A town or village of the invented region; rank 1 is the largest. */
export interface Town {
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  readonly rank: number;
}

/** A postcode district with the neighbourhood or village it stands for. */
export interface Postcode {
  readonly code: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
}

/** Towns and villages, largest first. */
export const TOWNS: readonly Town[] = [
  { name: 'Sallowmere', lat: 31.075, lon: -42.065, rank: 1 },
  { name: 'Ewerbridge', lat: 31.39, lon: -42.29, rank: 2 },
  { name: 'Strandside', lat: 31.12, lon: -41.71, rank: 2 },
  { name: 'Rillmouth', lat: 30.69, lon: -43.06, rank: 2 },
  { name: 'Corrow Foot', lat: 31.53, lon: -42.7, rank: 3 },
  { name: 'Thistleford', lat: 31.33, lon: -42.68, rank: 3 },
  { name: 'Cockle Quay', lat: 31.02, lon: -41.88, rank: 3 },
  { name: 'Saltern', lat: 30.605, lon: -42.7, rank: 3 },
  { name: 'Whelk Bay', lat: 31.7, lon: -41.8, rank: 3 },
  { name: 'Gannet Haven', lat: 31.415, lon: -41.45, rank: 3 },
  { name: 'Mereside', lat: 31.16, lon: -42.2, rank: 4 },
  { name: 'Wickel', lat: 30.735, lon: -42.02, rank: 4 },
  { name: 'Hollin', lat: 31.692, lon: -42.985, rank: 4 },
];

/** Neighbourhoods in postcode order: dense in the towns, one a village elsewhere. */
const NEIGHBOURHOODS: readonly (readonly [name: string, lat: number, lon: number])[] = [
  ['Sallowmere Harbourside', 31.067, -42.048],
  ['Sallowmere Ropewalk', 31.078, -42.056],
  ['Sallowmere Market', 31.08, -42.068],
  ['Sallowmere Lantern Hill', 31.091, -42.064],
  ['Sallowmere Botanic', 31.097, -42.084],
  ['Sallowmere Tannery', 31.086, -42.079],
  ['Sallowmere St Osk', 31.073, -42.081],
  ['Sallowmere College', 31.057, -42.093],
  ['Sallowmere South Shore', 31.043, -42.078],
  ['Sallowmere Withy Park', 31.062, -42.108],
  ['Sallowmere Gutside', 31.073, -42.118],
  ['Sallowmere North End', 31.109, -42.07],
  ['Sallowmere Ferry', 31.123, -42.046],
  ['Sallowmere Airfield', 31.116, -42.125],
  ['Tern Bay West', 31.0, -42.125],
  ['Ewer Sands', 31.17, -42.075],
  ['Mereside', 31.157, -42.203],
  ['Mere Leat', 31.08, -42.315],
  ['Heron Isle', 30.94, -42.004],
  ['Ewerbridge Old Town', 31.383, -42.292],
  ['Ewerbridge Mill Lane', 31.392, -42.303],
  ['Ewerbridge Waterworks', 31.408, -42.286],
  ['Ewerbridge East', 31.379, -42.27],
  ['Ewerbridge Airfield', 31.422, -42.355],
  ['Ewer Lock', 31.313, -42.188],
  ['Little Ewer', 31.542, -42.368],
  ['Ewerhead Ings', 31.26, -42.09],
  ['Plain Orchards', 31.206, -42.553],
  ['Leat Farm', 31.092, -42.437],
  ['Thistleford Bridge', 31.326, -42.678],
  ['Thistleford Green', 31.341, -42.69],
  ['Upper Thistle', 31.318, -42.925],
  ['Middle Plain', 31.28, -42.43],
  ['Corrow Foot Church', 31.529, -42.702],
  ['Corrow Foot Lower', 31.517, -42.672],
  ['Corrow Water', 31.578, -42.752],
  ['Scar Beck', 31.492, -42.866],
  ['Hollin', 31.69, -42.986],
  ['Tarn Beck', 31.64, -42.694],
  ['Foothill', 31.602, -42.613],
  ['Strandside Quay', 31.113, -41.699],
  ['Strandside Pines', 31.127, -41.718],
  ['Strandside West', 31.145, -41.745],
  ['Long Strand', 31.168, -41.568],
  ['Sedge Broad', 31.213, -41.848],
  ['Cockle Quay', 31.022, -41.879],
  ['Cockle Point', 30.93, -41.78],
  ['Bay Head', 31.198, -41.958],
  ['Gannet Haven', 31.414, -41.443],
  ['Gannet Head', 31.465, -41.372],
  ['Whelk Bay', 31.697, -41.793],
  ['Nether Wend', 31.744, -41.983],
  ['Wickel', 30.737, -42.022],
  ['Wickel Down', 30.858, -42.408],
  ['The Hook', 30.797, -41.945],
  ['Saltern', 30.603, -42.693],
  ['Saltern Brook', 30.868, -42.603],
  ['Marram Ness', 30.465, -42.534],
  ['Rillmouth Quay', 30.683, -43.063],
  ['Rillmouth Hill', 30.7, -43.045],
  ['Rill Bank', 30.88, -43.085],
  ['Rill Farm', 31.043, -43.11],
];

/** Postcodes "SC 101" and on. */
export const POSTCODES: readonly Postcode[] = NEIGHBOURHOODS.map(([name, lat, lon], i) => ({
  code: `SC ${101 + i}`,
  name,
  lat,
  lon,
}));
