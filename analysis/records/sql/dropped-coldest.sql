-- Purpose: the coldest values taken out or doubted, so that a reader can judge the rules. Inputs: $most rows.
-- Grain: one row a value, coldest first. Units: °C.
select station, strftime(date, '%Y-%m-%d') as date, element, value_c, verdict, reason, detail
from dropped
where element <> 'tmax'
order by value_c, station, dropped.date
limit $most::integer
