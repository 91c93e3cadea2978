-- Purpose: hits winter by winter: nights, spells, first and last night, coldest level.
-- Inputs: as hits.sql. Grain: one row a winter with at least one hit, by winter. Units: °C.
with hit as (
  select date, winter, level_c
  from (
    select date, winter,
           ([s0_c, s1_c, s2_c, s3_c, s4_c, s5_c, s6_c, s8_c, s10_c, s12_c, s18_c, s24_c])[$duration::integer]
           + (case kind when 'calm' then $calm_c::double when 'windy' then $windy_c::double
                        else least($calm_c::double, $windy_c::double) end)::decimal(4,2) as level_c
    from nights where station = $station
  )
  where level_c <= $limit_c::double::decimal(5,2)
)
select winter::integer as winter, count(*)::integer as nights, sum(opens)::integer as spells,
       strftime(min(date), '%Y-%m-%d') as first_date, strftime(max(date), '%Y-%m-%d') as last_date,
       min(level_c)::double as coldest_c,
       coalesce((select complete from winters w where w.station = $station and w.winter = h.winter), false) as complete
from (select *, case when date - lag(date) over (partition by winter order by date) <= 3 then 0 else 1 end as opens from hit) h
group by winter
order by winter
