# Writes r-values.json: dates of a mixed distribution by R, to compare with.
# Run: Rscript dates.R FOLDER   FOLDER holds fort_collins_1900-1999.csv.gz and denver_daily_min_1949-1999.csv.gz
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE)))
folder <- commandArgs(trailingOnly = TRUE)[1]
chances <- c(0.1, 0.25, 0.5, 0.75, 0.9)

# A made-up series: day of the season of each winter's first night, NA in winters without.
made <- c(171, 163, NA, 188, 201, 149, NA, 177, 180, 166, 195, 158, 210, NA, 173, 185, 169, 192, NA, 160,
          204, 176, NA, 183, 154, 198, 172, NA, 190, 167, 181)

# Order statistics i/(n+1) over all winters (type 6 of Hyndman and Fan), winters without one at infinity.
ranked <- function(days) {
  told <- quantile(ifelse(is.na(days), Inf, days), chances, type = 6, names = FALSE)
  ifelse(is.finite(told), told, NA)
}
# Thom and Shaw (1958): share with a night apart, a normal distribution of the days of the others.
normal <- function(days) {
  share <- mean(!is.na(days))
  told <- suppressWarnings(qnorm(chances / share, mean(days, na.rm = TRUE), sd(days, na.rm = TRUE)))
  ifelse(chances >= share, NA, told)
}

# Day of the July-June season, numbered as in a season with a 29 February.
season_day <- function(month, day) {
  year <- ifelse(month >= 7, 1999, 2000)
  as.integer(as.Date(sprintf("%d-%02d-%02d", year, month, day)) - as.Date("1999-07-01"))
}
dates <- function(year, month, day, f, limit, seasons) {
  season <- ifelse(month >= 7, year + 1, year)
  hit <- !is.na(f) & f <= limit
  number <- season_day(month, day)
  first <- sapply(seasons, function(s) { d <- number[hit & season == s]; if (length(d)) min(d) else NA })
  last <- sapply(seasons, function(s) { d <- number[hit & season == s]; if (length(d)) max(d) else NA })
  list(without = sum(is.na(first)), first = ranked(first), last = 365 - ranked(365 - last),
       earliest = min(first, na.rm = TRUE), latest = max(last, na.rm = TRUE))
}

number <- function(x) paste0("[", paste(ifelse(is.na(x), "null", trimws(formatC(x, digits = 12, format = "g"))), collapse = ", "), "]")
row <- function(series, limit, d, seasons) sprintf(
  '    {"series": "%s", "limit_f": %d, "winters": %d, "without": %d, "first": %s, "last": %s, "earliest": %d, "latest": %d}',
  series, limit, length(seasons), d$without, number(d$first), number(d$last), d$earliest, d$latest)

fc <- read.csv(gzfile(file.path(folder, "fort_collins_1900-1999.csv.gz")))
dv <- read.csv(gzfile(file.path(folder, "denver_daily_min_1949-1999.csv.gz")))
rows <- c(
  sapply(c(32, 28, -10, -20), function(l) row("fort_collins", l, dates(fc$Year, fc$Mn, fc$Dy, fc$MnT, l, 1901:1999), 1901:1999)),
  sapply(c(32, 28, -5, -12), function(l) row("denver", l, dates(dv$Year, dv$Mon, dv$Day, dv$Min, l, 1950:1999), 1950:1999)))

writeLines(c("{",
  sprintf('  "made_by": "dates.R, %s",', R.version.string),
  sprintf('  "chances": %s,', number(chances)),
  sprintf('  "made": {"days": %s, "ranked": %s, "normal": %s},', number(made), number(ranked(made)), number(normal(made))),
  '  "series": [', paste(rows, collapse = ",\n"), "  ]", "}"),
  file.path(here, "r-values.json"))
