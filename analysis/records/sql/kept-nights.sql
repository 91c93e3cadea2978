-- Purpose: every kept night of one station in whole numbers, for arrays: what a point's nights are estimated from.
-- Inputs: $station. Grain: one row a night, by date. Units: day number since 1970-01-01; kind as in NIGHT_KINDS (0 calm,
--         1 windy, 2 unclear); levels in hundredths of °C, -32768 unknown, in the order of SUSTAINED_HOURS;
--         hours at or below 10 °C in the 500 h before, -1 unknown.
select (date - date '1970-01-01')::integer as day, winter::integer as winter,
       (case kind when 'calm' then 0 when 'windy' then 1 else 2 end)::integer as kind,
       coalesce((s0_c * 100)::integer, -32768) as s0, coalesce((s1_c * 100)::integer, -32768) as s1,
       coalesce((s2_c * 100)::integer, -32768) as s2, coalesce((s3_c * 100)::integer, -32768) as s3,
       coalesce((s4_c * 100)::integer, -32768) as s4, coalesce((s5_c * 100)::integer, -32768) as s5,
       coalesce((s6_c * 100)::integer, -32768) as s6, coalesce((s8_c * 100)::integer, -32768) as s8,
       coalesce((s10_c * 100)::integer, -32768) as s10, coalesce((s12_c * 100)::integer, -32768) as s12,
       coalesce((s18_c * 100)::integer, -32768) as s18, coalesce((s24_c * 100)::integer, -32768) as s24,
       coalesce(cool_hours, -1)::integer as cool_hours
from nights
where station = $station
order by day
