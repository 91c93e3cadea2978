# Rscript extremes-peer.R FILE STATIONS WINTERS DAYS: times the network task of bench-extremes.ts in R, prints JSON.
# data.table where it is installed, else base R, and the note says which. Loading isn't timed.
suppressMessages(library(evd))
with_table <- suppressWarnings(suppressMessages(require(data.table, quietly = TRUE)))
args <- commandArgs(trailingOnly = TRUE)
size <- as.integer(args[2:4])
tmin <- readBin(args[1], "numeric", n = prod(size), size = 4)
station <- rep(seq_len(size[1]), each = size[2] * size[3])
winter <- rep(rep(seq_len(size[2]), each = size[3]), size[1])
thresholds <- seq(-14, 0.5, by = 0.5)
if (with_table) nights <- data.table(station, winter, tmin)
took <- function(expression) 1000 * system.time(expression)[["elapsed"]]

minima_ms <- took(
  if (with_table) minima <- nights[, .(m = min(tmin)), keyby = .(station, winter)]$m
  else minima <- as.vector(tapply(tmin, list(winter, station), min)))
counts_ms <- took({
  bin <- findInterval(tmin, thresholds, left.open = TRUE) + 1L
  keep <- bin <= 30L
  counts <- apply(matrix(tabulate((station[keep] - 1L) * 30L + bin[keep], size[1] * 30L), 30), 2, cumsum)
})
by_station <- matrix(-minima, nrow = size[2])
fits_ms <- took(location <- apply(by_station, 2, function(y) fgev(y, std.err = FALSE)$estimate[[1]]))
cat(sprintf(
  '{"minimaMs": %f, "countsMs": %f, "fitsMs": %f, "sumOfMinima": %.8f, "sumOfCounts": %.0f, "meanLocation": %.8f, "note": "%s"}\n',
  minima_ms, counts_ms, fits_ms, sum(minima), sum(counts), mean(location),
  if (with_table) "" else "; without data.table"))
