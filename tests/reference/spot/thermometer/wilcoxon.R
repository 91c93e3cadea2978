# Reference values for the robust offset: Hodges-Lehmann's estimate with its 90 % interval by wilcox.test (package stats), and
# quantiles of the signed rank statistic. Run by hand: Rscript wilcoxon.R > wilcoxon.json (jsonlite not needed).
options(digits = 15)
set.seed(20240117)
rounded <- function(x) round(x, 4)
samples <- list(
  five = c(1.13, 2.47, 0.82, 1.96, 3.35),
  eight = c(-0.41, 1.27, 0.63, 2.08, 1.71, 0.17, 0.96, 5.9),
  fifteen = rounded(2 + 1.1 * rt(15, 4)),
  thirty = rounded(-1.5 + 0.8 * rt(30, 3)),
  forty = rounded(0.4 + 1.3 * rt(40, 6)),
  ties = c(1, 2, 2, 3, 2, 1, 4, 2, 3, 1, 2, 3),
  sixty = rounded(1 + rt(60, 5))
)
show <- function(x) paste0("[", paste(format(x, digits = 15, trim = TRUE), collapse = ", "), "]")
rows <- sapply(names(samples), function(name) {
  x <- samples[[name]]
  tied <- anyDuplicated(abs(x)) > 0
  t <- suppressWarnings(wilcox.test(x, conf.int = TRUE, conf.level = 0.9, exact = if (tied) FALSE else NULL, correct = TRUE))
  sprintf('    {"name": "%s", "exact": %s, "values": %s, "centre": %s, "low": %s, "high": %s}', name,
    if (length(x) < 50 && !tied) "true" else "false", show(x), format(t$estimate, digits = 15), format(t$conf.int[1], digits = 15),
    format(t$conf.int[2], digits = 15))
})
quantiles <- sapply(c(1:12, 15, 20, 30, 49), function(n) sprintf("[%d, %d, %d]", n, qsignrank(0.05, n), qsignrank(0.025, n)))
cat('{\n  "made_by": "', R.version.string, ', wilcoxon.R",\n  "intervals": [\n', paste(rows, collapse = ",\n"), '\n  ],\n',
  '  "signed_rank_quantiles_05_025": [', paste(quantiles, collapse = ", "), ']\n}\n', sep = "")
