-- Once, as superuser:  psql -v owner_password=… -v app_password=… -f roles.sql
-- Two roles: one owns the schema and runs migrations, the other serves requests and owns nothing.
create role demebook_owner login nosuperuser nobypassrls password :'owner_password';
create role demebook_app login nosuperuser nobypassrls password :'app_password';
create database demebook owner demebook_owner encoding 'UTF8' template template0;
\connect demebook
revoke create on schema public from public;
revoke all on database demebook from public;
grant connect on database demebook to demebook_app;
create schema demebook authorization demebook_owner;
grant usage on schema demebook to demebook_app;
alter role demebook_owner in database demebook set search_path = demebook;
alter role demebook_app in database demebook set search_path = demebook;
