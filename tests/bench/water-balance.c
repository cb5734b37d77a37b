/*
 * The long-term water balance of a basin, every step taken: the same arithmetic as tests/functions/long-term/step-loop.ts,
 * in the same order, on the same grid of whole units, so both end on the same bits.
 *
 *   cc -O2 -ffp-contract=off -o water-balance water-balance.c && ./water-balance input
 *
 * The input holds two 32-bit counts, steps and sites; then, in doubles, rain and runoff of every step, and media,
 * capacity, draw, runoff per inch and direct per inch of every site. Then each letter read answers a line: r computes all
 * sites and prints the nanoseconds it took, o prints the bits of what came out. No contraction, because a fused multiply
 * and add rounds once where two operations round twice.
 */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

/* 1.5 x 2^52: beside it a double has no room for a fraction. */
static const double ROUNDER = 6755399441055744.0;

typedef struct {
  double media, capacity, draw, runoff_per_inch, direct_per_inch;
} grid;

typedef struct {
  double runoff, direct, drawn, overflow, stored, overflows, longest;
} balance;

static void balance_of(const double *rain_inches, const double *runoff_inches, int32_t steps, const grid *site, balance *out) {
  const double media = site->media, capacity = site->capacity, draw = site->draw;
  const double runoff_per_inch = site->runoff_per_inch, direct_per_inch = site->direct_per_inch;
  double runoff = 0, direct = 0, drawn = 0, overflow = 0, stored = 0, since = 0, longest = 0;
  int32_t overflows = 0;
  int is_spilling = 0;
  for (int32_t step = 0; step < steps; step += 1) {
    const double runoff_now = runoff_inches[step] * runoff_per_inch + ROUNDER - ROUNDER;
    const double direct_now = rain_inches[step] * direct_per_inch + ROUNDER - ROUNDER;
    const double inflow = runoff_now + direct_now;
    const double available = stored + inflow;
    const double drawn_now = draw < available ? draw : available;
    const double left = available - drawn_now;
    const double after = left < capacity ? left : capacity;
    const double spilled = left - after;
    runoff += runoff_now;
    direct += direct_now;
    drawn += drawn_now;
    overflow += spilled;
    if (spilled > 0 && !is_spilling) overflows += 1;
    is_spilling = spilled > 0;
    if (after > media) {
      if (stored <= media) since = step + (media - stored) / (inflow - draw);
    } else if (stored > media) {
      const double length = step + (stored - media) / (draw - inflow) - since;
      if (length > longest) longest = length;
    }
    stored = after;
  }
  if (stored > media && steps - since > longest) longest = steps - since;
  *out = (balance){runoff, direct, drawn, overflow, stored, overflows, longest};
}

int main(int count, char **words) {
  int32_t sizes[2];
  FILE *input = count == 2 ? fopen(words[1], "rb") : NULL;
  if (input == NULL || fread(sizes, sizeof *sizes, 2, input) != 2) return 1;
  const int32_t steps = sizes[0], sites = sizes[1];
  double *rain = malloc(steps * sizeof *rain), *runoff = malloc(steps * sizeof *runoff);
  grid *grids = malloc(sites * sizeof *grids);
  balance *out = calloc(sites, sizeof *out);
  if (rain == NULL || runoff == NULL || grids == NULL || out == NULL) return 1;
  if (fread(rain, sizeof *rain, steps, input) != (size_t)steps || fread(runoff, sizeof *runoff, steps, input) != (size_t)steps) return 1;
  if (fread(grids, sizeof *grids, sites, input) != (size_t)sites) return 1;
  fclose(input);
  for (int letter = getchar(); letter != EOF; letter = getchar()) {
    if (letter == 'r') {
      struct timespec from, to;
      clock_gettime(CLOCK_MONOTONIC, &from);
      for (int32_t site = 0; site < sites; site += 1) balance_of(rain, runoff, steps, grids + site, out + site);
      clock_gettime(CLOCK_MONOTONIC, &to);
      printf("%lld\n", (to.tv_sec - from.tv_sec) * 1000000000LL + (to.tv_nsec - from.tv_nsec));
    } else if (letter == 'o') {
      for (int32_t site = 0; site < sites; site += 1) {
        uint64_t bits[7];
        memcpy(bits, out + site, sizeof bits);
        for (int value = 0; value < 7; value += 1) printf("%016llx", (unsigned long long)bits[value]);
      }
      printf("\n");
    }
    fflush(stdout);
  }
  return 0;
}
