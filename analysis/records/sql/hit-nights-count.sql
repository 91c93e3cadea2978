-- Purpose: nights with a hit in complete winters, for many (hours, limit) pairs at once.
-- Inputs: $station; $durations and $limits_c comma-separated lists of equal length (index of hours from 1; threshold
--         plus penalties, °C); $calm_c, $windy_c gains, °C. Grain: one row a pair, by its place in the lists.
with asked as (
  select unnest(range(1, len(string_split($durations, ',')) + 1))::integer as pair,
         unnest(string_split($durations, ','))::integer as duration,
         unnest(string_split($limits_c, ','))::double::decimal(5,2) as limit_c
),
known as (
  select [s0_c, s1_c, s2_c, s3_c, s4_c, s5_c, s6_c, s8_c, s10_c, s12_c, s18_c, s24_c] as s,
         (case n.kind when 'calm' then $calm_c::double when 'windy' then $windy_c::double
                      else least($calm_c::double, $windy_c::double) end)::decimal(4,2) as gain_c
  from nights n join winters w on w.station = n.station and w.winter = n.winter and w.complete
  where n.station = $station
)
select asked.pair as pair, count(known.s)::integer as nights
from asked left join known on known.s[asked.duration] + known.gain_c <= asked.limit_c
group by asked.pair
order by asked.pair
