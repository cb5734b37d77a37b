import { PublishedDocument, type Published } from "./source.ts";

export const volunteerHour = new PublishedDocument(
  "Independent Sector and Do Good Institute, value of volunteer time",
  "yearly releases to April 2023",
  "read",
);

/** National value of a volunteer's hour in US dollars, by the year the hours were worked. Earnings were loaded otherwise from 2019. */
export const volunteerDollarsPerHour: Published<ReadonlyMap<number, number>> = {
  values: new Map([
    [2001, 16.27],
    [2008, 20.25],
    [2009, 20.85],
    [2012, 22.14],
    [2014, 23.07],
    [2015, 23.56],
    [2016, 24.14],
    [2017, 24.69],
    [2018, 25.43],
    [2019, 27.2],
    [2020, 28.54],
    [2021, 29.95],
    [2022, 31.8],
  ]),
  printedTo: 0.01,
  from: volunteerHour.place("national values by year"),
};

/** The least and the most of the values by state and territory that were read, of 2020. */
export const volunteerDollarsByPlace: Published<{ readonly "Puerto Rico": number; readonly "District of Columbia": number }> = {
  values: { "Puerto Rico": 13.74, "District of Columbia": 48.67 },
  printedTo: 0.01,
  from: volunteerHour.place("values by state and territory, 2020"),
};
