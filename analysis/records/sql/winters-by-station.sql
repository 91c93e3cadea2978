-- Purpose: stations with their winters, kept nights and kinds of night. No inputs.
-- Grain: one row a station, by id. Units: km, m, counts.
select s.station as station, name, lat, lon, elevation_m, coast_km, s.basis as basis, winters_complete, first_winter, last_winter,
       count(n.date)::integer as nights,
       count(*) filter (n.kind = 'calm')::integer as calm, count(*) filter (n.kind = 'windy')::integer as windy
from stations s left join nights n on n.station = s.station
group by all
order by s.station
