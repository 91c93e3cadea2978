-- Purpose: the nights that hit: sustained cold with the gain of the night's kind at or below a limit.
-- Inputs: $station; $duration index of the hours in (0,1,2,3,4,5,6,8,10,12,18,24), from 1; $limit_c threshold plus
--         penalties; $calm_c, $windy_c gains. All °C; comparison is in hundredths of a degree.
-- Grain: one row a night, by date; `spell` numbers the spells (fewer than 3 nights without a hit between hits).
with hit as (
  select date, winter, kind, basis, tmin_c, level_c
  from (
    select date, winter, kind, basis, tmin_c,
           ([s0_c, s1_c, s2_c, s3_c, s4_c, s5_c, s6_c, s8_c, s10_c, s12_c, s18_c, s24_c])[$duration::integer]
           + (case kind when 'calm' then $calm_c::double when 'windy' then $windy_c::double
                        else least($calm_c::double, $windy_c::double) end)::decimal(4,2) as level_c
    from nights where station = $station
  )
  where level_c <= $limit_c::double::decimal(5,2)
)
select strftime(date, '%Y-%m-%d') as date, winter::integer as winter, kind, basis,
       tmin_c::double as tmin_c, level_c::double as level_c,
       (sum(opens) over (order by date rows unbounded preceding))::integer as spell
from (select *, case when date - lag(date) over (order by date) <= 3 then 0 else 1 end as opens from hit)
order by 1
