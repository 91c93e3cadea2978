-- Purpose: every kept night of one station, as `records nights` prints them.
-- Inputs: $station. Grain: one row a night, by date. Units: °C.
select strftime(date, '%Y-%m-%d') as date, winter::integer as winter, kind, basis,
       tmin_c::double as tmin_c, tmax_before_c::double as tmax_before_c, tmax_after_c::double as tmax_after_c,
       s0_c::double as s0_c, s1_c::double as s1_c, s2_c::double as s2_c, s3_c::double as s3_c, s4_c::double as s4_c,
       s5_c::double as s5_c, s6_c::double as s6_c, s8_c::double as s8_c, s10_c::double as s10_c, s12_c::double as s12_c,
       s18_c::double as s18_c, s24_c::double as s24_c
from nights
where station = $station
order by nights.date
