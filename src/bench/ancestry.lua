-- for wrk: asks for five generations of one animal after the other, the youngest half of the population in turn
local folder = os.getenv("BENCH_FOLDER")

local function read(name)
    local file = assert(io.open(folder .. "/" .. name))
    local text = file:read("*a")
    file:close()
    return text
end

local paths = {}
local population = read("population")
for number in read("numbers"):gmatch("%S+") do
    paths[#paths + 1] = "/api/v1/populations/" .. population .. "/animals/" .. number .. "/ancestry?generations=5"
end
local headers = { ["Authorization"] = "Bearer " .. read("token") }
local first = math.floor(#paths / 2)
local next = first

request = function()
    next = next < #paths and next + 1 or first
    return wrk.format("GET", paths[next], headers)
end

done = function(summary)
    if summary.errors.status > 0 then
        print("answers other than 2xx: " .. summary.errors.status)
    end
end
