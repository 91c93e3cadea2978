-- Tables of a record pack's database. Temperatures °C in steps of 0.01, nights dated by their morning.
-- Grain: stations one row a station; nights one row a station and night with a minimum at or below 10 °C;
-- winters one row a station and winter; dropped one row a value that cleaning took out or doubted.
create table stations (
  station varchar not null, name varchar not null, lat double not null, lon double not null,
  elevation_m double, coast_km double, basis varchar not null,
  winters_complete integer not null, first_winter integer, last_winter integer
);
create table nights (
  station varchar not null, date date not null, winter smallint not null, kind varchar not null, basis varchar not null,
  tmin_c decimal(4,2), tmax_before_c decimal(4,2), tmax_after_c decimal(4,2),
  s0_c decimal(4,2), s1_c decimal(4,2), s2_c decimal(4,2), s3_c decimal(4,2), s4_c decimal(4,2), s5_c decimal(4,2),
  s6_c decimal(4,2), s8_c decimal(4,2), s10_c decimal(4,2), s12_c decimal(4,2), s18_c decimal(4,2), s24_c decimal(4,2),
  cool_hours smallint
);
create table winters (station varchar not null, winter smallint not null, complete boolean not null, reason varchar not null);
create table dropped (
  station varchar not null, date date not null, element varchar not null, value_c double not null,
  verdict varchar not null, reason varchar not null, detail varchar not null
);
