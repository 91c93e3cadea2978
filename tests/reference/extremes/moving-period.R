# Writes moving-period.json: return periods in the last winter of a GEV whose location moves with the winter, by R's evd.
# Run: Rscript moving-period.R
suppressMessages(library(evd))
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE)))
made <- system2("/usr/bin/env", c("python3", "-c", shQuote(paste0(
  "import json; s=json.load(open('", file.path(here, "series.json"), "'))['series']\n",
  "print('series,index,value')\n",
  "[print(f'{k},{i+1},{v!r}') for k in s for i,v in enumerate(s[k])]"))), stdout = TRUE)
all <- read.csv(text = made, stringsAsFactors = FALSE)
one <- function(x) paste0("[", paste(formatC(x, digits = 10, format = "g"), collapse = ", "), "]")
rows <- character(0)
for (name in unique(all$series)) {
  y <- all$value[all$series == name]
  t <- all$index[all$series == name]
  centred <- t - mean(t)
  fit <- fgev(y, nsloc = data.frame(t = centred / 50), control = list(reltol = 1e-14, maxit = 10000))
  e <- fit$estimate
  at <- e[1] + e[2] * tail(centred, 1) / 50
  # Levels that the last year of the record passes once in 2, 5, 10 and 30 years, and what a year later makes of them.
  levels <- qgev(1 - 1 / c(2, 5, 10, 30), at, e[3], e[4])
  round4 <- round(levels, 4)
  later <- e[1] + e[2] * (tail(centred, 1) + 10) / 50
  rows <- c(rows, paste0('  "', name, '": {"levels": ', one(round4),
    ', "periods_last": ', one(1 / pgev(round4, at, e[3], e[4], lower.tail = FALSE)),
    ', "periods_ten_later": ', one(1 / pgev(round4, later, e[3], e[4], lower.tail = FALSE)), '}'))
}
about <- paste0("R ", getRversion(), ", evd ", packageVersion("evd"), "; values as in series.json; written by moving-period.R")
cat(paste0('{\n "about": "', about, '",\n "series": {\n', paste(rows, collapse = ",\n"), "\n }\n}\n"),
    file = file.path(here, "moving-period.json"))
