-- Purpose: values taken out or doubted, counted by reason, with the coldest of them. No inputs.
-- Grain: one row a verdict, element and reason, most frequent first. Units: °C.
select verdict, element, reason, count(*)::integer as count, count(distinct station)::integer as stations, min(value_c) as coldest_c
from dropped
group by all
order by verdict, count desc, reason, element
