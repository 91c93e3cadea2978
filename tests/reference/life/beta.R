# Writes beta.json: quantiles of Beta(1/2, n + 1/2), Jeffreys' posterior of a chance after 0 hits in n.
#   Rscript tests/reference/life/beta.R > tests/reference/life/beta.json
row <- function(n) sprintf('{"n":%d,"quantiles":{%s}}', n, paste(sprintf('"%s":%.12g', c("0.05", "0.5", "0.95"), qbeta(c(0.05, 0.5, 0.95), 0.5, n + 0.5)), collapse = ","))
cat(sprintf('{"made_by":"beta.R, %s","rows":[%s]}\n', R.version.string, paste(sapply(c(10, 25, 40, 60), row), collapse = ",")))
