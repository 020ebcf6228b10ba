% Times Octave's direct solver, CHOLMOD, on a matrix written by SolverRaceTests: prints elapsed and processor seconds.
% Usage: octave-cli solve_timed.m FOLDER
folder = argv(){1};
function x = numbers(path, kind)
  file = fopen(path, "r");
  x = fread(file, Inf, kind);
  fclose(file);
end
pointers = numbers([folder "/pointers.bin"], "int32");
rows = numbers([folder "/rows.bin"], "int32") + 1;
values = numbers([folder "/values.bin"], "double");
right = numbers([folder "/right.bin"], "double");
n = numel(right);
columns = repelems(1:n, [1:n; diff(pointers)'])';
lower = sparse(rows, columns, values, n, n);
matrix = matrix_type(lower + tril(lower, -1)', "positive definite");
tic;
processor = cputime;
x = matrix \ right;
printf("%.4f %.4f\n", toc, cputime - processor);
