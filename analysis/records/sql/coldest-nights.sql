-- Purpose: a station's coldest nights for some duration, to look at one by one.
-- Inputs: $station; $duration index of the hours in (0,1,2,3,4,5,6,8,10,12,18,24), from 1; $count rows at most.
-- Grain: one row a night, coldest first, equals by date. Units: °C. No gains.
select strftime(date, '%Y-%m-%d') as date, winter::integer as winter, kind, basis, tmin_c::double as tmin_c, level_c::double as level_c
from (
  select date, winter, kind, basis, tmin_c,
         ([s0_c, s1_c, s2_c, s3_c, s4_c, s5_c, s6_c, s8_c, s10_c, s12_c, s18_c, s24_c])[$duration::integer] as level_c
  from nights where station = $station
)
where level_c is not null
order by level_c, 1
limit $count::integer
