# Writes evd-values.json: GEV fits by R's evd, to compare with.
# Run: Rscript evd.R [FOLDER]   FOLDER holds the public series of PROVENANCE.md (left out: made-up series only).
suppressMessages(library(evd))
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE)))
args <- commandArgs(trailingOnly = TRUE)

made <- system2("/usr/bin/env", c("python3", "-c", shQuote(paste0(
  "import json; s=json.load(open('", file.path(here, "series.json"), "'))['series']\n",
  "print('series,index,value')\n",
  "[print(f'{k},{i+1},{v!r}') for k in s for i,v in enumerate(s[k])]"))), stdout = TRUE)
tables <- list(read.csv(text = made, stringsAsFactors = FALSE))
if (length(args) > 0)
  tables[[2]] <- read.csv(text = system2("/usr/bin/env", c("python3", file.path(here, "real-series.py"), args[1]), stdout = TRUE),
                          stringsAsFactors = FALSE)
all <- do.call(rbind, tables)

number <- function(x) paste0("[", paste(formatC(x, digits = 10, format = "g"), collapse = ", "), "]")
one <- function(x) formatC(x, digits = 10, format = "g")
tight <- list(reltol = 1e-14, maxit = 10000)
rows <- character(0)
for (name in unique(all$series)) {
  y <- all$value[all$series == name]
  t <- all$index[all$series == name]
  fit <- fgev(y, control = tight)
  e <- fit$estimate
  levels <- qgev(1 - 1 / c(2, 10, 50), e[1], e[2], e[3])
  centred <- t - mean(t)
  moving <- fgev(y, nsloc = data.frame(t = centred / 50), control = tight)
  prof <- confint(profile(fit, which = "shape", conf = 0.99, mesh = 0.01, lower = e[3] - 0.6, upper = e[3] + 0.6), level = 0.9)
  rows <- c(rows, paste0(
    '  "', name, '": {"n": ', length(y), ', "mu_sigma_xi": ', number(e), ', "se": ', number(fit$std.err),
    ', "loglik": ', one(-fit$deviance / 2), ', "level_2_10_50": ', number(levels),
    ', "profile90_xi": ', number(as.vector(prof)),
    ',\n   "moving": {"index_mean": ', one(mean(t)), ', "mu0_mu1_sigma_xi": ', number(moving$estimate[c(1, 2, 3, 4)] * c(1, 1 / 50, 1, 1)),
    ', "slope_se": ', one(moving$std.err[2] / 50), ', "loglik": ', one(-moving$deviance / 2), '}}'))
}
about <- paste0("R ", getRversion(), ", evd ", packageVersion("evd"), "; Coles' xi; minima negated; written by evd.R")
cat(paste0('{\n "about": "', about, '",\n "fits": {\n', paste(rows, collapse = ",\n"), "\n }\n}\n"),
    file = file.path(here, "evd-values.json"))
