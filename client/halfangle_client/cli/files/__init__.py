"""Commands that write files: a sheet of an answer, a workbook whose rows are filled."""
